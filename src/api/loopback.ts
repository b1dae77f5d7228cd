// Which addresses only this machine can reach. Used to decide where the service may listen and whom it answers.
import { BlockList, isIP } from 'node:net';

const loopback = new BlockList();
loopback.addSubnet('127.0.0.0', 8, 'ipv4');
loopback.addAddress('::1', 'ipv6');

/** Whether it is an address, not a name, that leads back to this machine. */
export function isLoopback(address: string): boolean {
  const family = isIP(address);
  return family !== 0 && loopback.check(address, family === 6 ? 'ipv6' : 'ipv4');
}

// Every setting of `ovenward serve`: flag, variable, bounds, what it is when nobody says. The help, the reading and docs/serve.md follow it.
import { isIP } from 'node:net';
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import type { LogLevel } from '../../api/telling/serviceLog.ts';
import { oneOf, type Setting, someNumber, wholeNumber } from './setting.ts';
import { storeFile } from './storeFile.ts';
import { tokenText } from './tokenText.ts';

const LOG_LEVELS = ['debug', 'info', 'warn', 'error', 'silent'] as const satisfies readonly LogLevel[];

const MOST_PORT = 65_535;
const DAY_SECONDS = 86_400;

function number(flag: string, variable: string, says: string, usual: number, read: Setting<number>['read']): Setting<number> {
  return { flag, variable, says, usually: `${usual}`, usual: () => usual, read };
}

const port = number(
  '--port <n>',
  'OVENWARD_PORT',
  'port to listen on, 0 to 65535; 0 takes any free one',
  8430,
  wholeNumber(0, MOST_PORT),
);

const host: Setting<string> = {
  flag: '--host <address>',
  variable: 'OVENWARD_HOST',
  says: 'IP address to listen on; one that other machines reach needs a token',
  usually: '127.0.0.1',
  usual: () => '127.0.0.1',
  read: (text) =>
    isIP(text) === 0
      ? { says: `"${text}" is not an IP address`, doThis: 'give one, such as 127.0.0.1 or 192.168.1.20' }
      : { value: text },
};

/** A token among the arguments would be there for everybody who lists the processes, so it has no flag. */
const token: Setting<string | null> = {
  flag: null,
  variable: 'OVENWARD_TOKEN',
  says: 'token that requests must carry; 16 or more letters, digits and -._~+/=',
  usually: 'none',
  usual: () => null,
  read: tokenText,
};

const tokenFile: Setting<string | null> = {
  flag: '--token-file <file>',
  variable: 'OVENWARD_TOKEN_FILE',
  says: 'file that holds the token',
  usually: 'none',
  usual: () => null,
  read: (text) => ({ value: text }),
};

export const store: Setting<string> = {
  flag: '--store <file>',
  variable: 'OVENWARD_STORE',
  says: 'file that scenarios, plans and posted days are kept in',
  usually: '~/.local/share/ovenward/ovenward.db',
  usual: storeFile,
  read: (text) => ({ value: resolve(text) }),
};

const logLevel: Setting<LogLevel> = {
  flag: '--log-level <level>',
  variable: 'OVENWARD_LOG_LEVEL',
  says: `least that is logged: ${LOG_LEVELS.join(', ')}`,
  usually: 'info',
  usual: () => 'info',
  read: oneOf(LOG_LEVELS),
};

function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

const timeZone: Setting<string | null> = {
  flag: '--time-zone <name>',
  variable: 'OVENWARD_TIME_ZONE',
  says: 'where the bakery is, as Europe/Lisbon, and so which day is today',
  usually: 'that of the plan posted last',
  usual: () => null,
  read: (text) =>
    isTimeZone(text)
      ? { value: text }
      : { says: `"${text}" is no time zone this machine knows`, doThis: 'give a name such as Europe/Lisbon' },
};

const threads: Setting<number> = {
  flag: '--threads <n>',
  variable: 'OVENWARD_THREADS',
  says: 'plans made at once, each on a thread, 1 to 64',
  usually: 'one a processor',
  usual: () => availableParallelism(),
  read: wholeNumber(1, 64),
};

export const SERVE_SETTINGS = {
  port,
  host,
  token,
  tokenFile,
  store,
  threads,
  places: number(
    '--places <n>',
    'OVENWARD_PLACES',
    'requests that may wait for a thread, 0 to 10000',
    64,
    wholeNumber(0, 10_000),
  ),
  mostSeconds: number(
    '--most-seconds <n>',
    'OVENWARD_MOST_SECONDS',
    'longest search anybody may ask for, 0.1 to 86400 seconds',
    60,
    someNumber(0.1, DAY_SECONDS),
  ),
  usualSeconds: number(
    '--usual-seconds <n>',
    'OVENWARD_USUAL_SECONDS',
    'search of a request that sets no limit, 0.1 to 86400 seconds',
    5,
    someNumber(0.1, DAY_SECONDS),
  ),
  requestsPerMinute: number(
    '--requests-per-minute <n>',
    'OVENWARD_REQUESTS_PER_MINUTE',
    'requests a minute from one address, 1 to 1000000',
    600,
    wholeNumber(1, 1_000_000),
  ),
  bodyKb: number(
    '--body-kb <n>',
    'OVENWARD_BODY_KB',
    'largest body of a request in kB, 1 to 100000',
    1000,
    wholeNumber(1, 100_000),
  ),
  graceSeconds: number(
    '--grace-seconds <n>',
    'OVENWARD_GRACE_SECONDS',
    'how long searches may take to end when it is asked to stop, 0 to 3600 seconds',
    10,
    someNumber(0, 3600),
  ),
  keepDays: number(
    '--keep-days <n>',
    'OVENWARD_KEEP_DAYS',
    'days that plans nobody posted are kept, 1 to 36500',
    30,
    wholeNumber(1, 36_500),
  ),
  logLevel,
  timeZone,
} as const;

export type ServeSettings = {
  readonly [Name in keyof typeof SERVE_SETTINGS]: ReturnType<(typeof SERVE_SETTINGS)[Name]['usual']>;
};

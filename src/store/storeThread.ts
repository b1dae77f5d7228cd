// Runs in a thread of its own: opens the store there and does what openStoreThread.ts asks of it, so that nobody waits for the disk but who
// asked for it.
import { workerData } from 'piscina';
import * as z from 'zod';
import { openStore } from './openStore.ts';
import type { Store } from './store.ts';
import { StoreFault, type StoreFaultCode } from './storeFault.ts';

export type Words = { readonly [Act in keyof Store]: Readonly<Parameters<Store[Act]>> };
export type Answers = { readonly [Act in keyof Store]: Awaited<ReturnType<Store[Act]>> };

/** One call of the store: the name of its method and what is handed to it. */
export type StoreCall<Act extends keyof Store = keyof Store> = {
  [Each in Act]: { readonly act: Each; readonly words: Words[Each] };
}[Act];

/** A fault loses its class on the way between threads: it travels as what it is made of. */
export type StoreAnswer<Act extends keyof Store = keyof Store> =
  | { readonly ok: true; readonly answer: Answers[Act] }
  | { readonly ok: false; readonly code: StoreFaultCode; readonly says: string };

/** What the thread is started with. */
export const storeThreadSchema = z.strictObject({
  file: z.string(),
  busyMs: z.number().exactOptional(),
  checkpointPages: z.number().exactOptional(),
});

type Methods = { readonly [Act in keyof Store]: (...words: Words[Act]) => Promise<Answers[Act]> };

function called<Act extends keyof Store>(methods: Methods, { act, words }: StoreCall<Act>): Promise<Answers[Act]> {
  return methods[act](...words);
}

let opened: Promise<Store> | null = null;

function theStore(): Promise<Store> {
  const { file, ...options } = storeThreadSchema.parse(workerData);
  opened ??= openStore(file, options);
  return opened;
}

export default async function storeThread(call: StoreCall): Promise<StoreAnswer> {
  try {
    return { ok: true, answer: await called(await theStore(), call) };
  } catch (error) {
    if (error instanceof StoreFault) return { ok: false, code: error.code, says: error.message };
    throw error;
  }
}

// A running copy of a core that was compiled ahead to WebAssembly, with a memory of its own. Used by the learning solver and the beam.

/** As much of the standard's interface as is used here. */
declare const WebAssembly: {
  readonly Module: new (code: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: unknown };
};

/** A core reserves some 10 GB of addresses, of which it fills a small part: where addresses are rationed that is refused. */
const NO_ADDRESSES =
  'no addresses are left for WebAssembly: allow the process more virtual memory (ulimit -v unlimited), or set NODE_OPTIONS=--disable-wasm-trap-handler, which needs few';

const compiled = new Map<string, object>();

/**
 * A new copy of a core from its code in base64; `imports` are what it may call, by file and name. Returns what it offers.
 * Error, with what to do, where the process may not have the addresses it needs.
 */
export function coreInstance(code: string, imports: Record<string, Record<string, () => unknown>>): unknown {
  const module = compiled.get(code) ?? new WebAssembly.Module(Buffer.from(code, 'base64'));
  compiled.set(code, module);
  try {
    return new WebAssembly.Instance(module, imports).exports;
  } catch (error) {
    throw error instanceof RangeError ? new Error(NO_ADDRESSES, { cause: error }) : error;
  }
}

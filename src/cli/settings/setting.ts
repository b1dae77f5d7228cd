// One setting of the service: how it is named as a flag and as a variable, what it may be, and what it is when nobody says.
// Used by serveSettings.ts, the help of `serve`, and readSettings.ts.

export type Environment = Readonly<Record<string, string | undefined>>;

/** A text as the value it stands for, or what to do about it. */
export type SettingReading<T> = { readonly value: T } | { readonly says: string; readonly doThis: string };

export type Setting<T> = {
  /** As commander reads it: `--port <n>`. Null where a flag would be a mistake. */
  readonly flag: string | null;
  readonly variable: string;
  /** In the help and in docs/serve.md. */
  readonly says: string;
  /** The value when nothing is said, in words. */
  readonly usually: string;
  readonly usual: (env: Environment) => T;
  readonly read: (text: string) => SettingReading<T>;
};

/** A whole number, both bounds included. */
export function wholeNumber(least: number, most: number): Setting<number>['read'] {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return { value };
    return { says: `"${text}" is not one of its values`, doThis: `give a whole number from ${least} to ${most}` };
  };
}

/** A number, both bounds included. */
export function someNumber(least: number, most: number): Setting<number>['read'] {
  return (text) => {
    const value = Number(text);
    if (/^\d+(\.\d+)?$/.test(text) && value >= least && value <= most) return { value };
    return { says: `"${text}" is not one of its values`, doThis: `give a number from ${least} to ${most}` };
  };
}

/** One of a few words. */
export function oneOf<T extends string>(words: readonly T[]): (text: string) => SettingReading<T> {
  return (text) => {
    const value = words.find((word) => word === text);
    if (value !== undefined) return { value };
    return { says: `"${text}" is not one of its values`, doThis: `give one of ${words.join(', ')}` };
  };
}

// Flags and environment as the settings of `serve`: a flag wins, an empty variable is as good as none, and everything wrong is told at once.
import { isLoopback } from '../../api/loopback.ts';
import type { InputError } from '../../model/inputError.ts';
import { didYouMean } from '../../read/didYouMean.ts';
import { BadInput } from '../badInput.ts';
import { OTHER_VARIABLES } from './otherVariables.ts';
import { SERVE_SETTINGS, type ServeSettings } from './serveSettings.ts';
import type { Environment, Setting } from './setting.ts';
import { tokenFrom } from './tokenFrom.ts';

/** Texts of the flags that were given, by the variable of the same setting. */
export type Flags = Readonly<Record<string, string>>;

type Named = { readonly name: string; readonly text: string };

const OURS = /^OVENWARD_/;

function flagName({ flag, variable }: Setting<unknown>): string {
  return flag?.split(' ')[0] ?? variable;
}

/** Where a setting is said, and what. */
function named(setting: Setting<unknown>, flags: Flags, env: Environment): Named | null {
  const flag = flags[setting.variable];
  if (flag !== undefined) return { name: flagName(setting), text: flag };
  const variable = env[setting.variable] ?? '';
  return variable === '' ? null : { name: setting.variable, text: variable };
}

/** A name misspelt would be a setting silently left out. */
function unknownVariables(env: Environment): readonly InputError[] {
  const known = [...Object.values(SERVE_SETTINGS).map(({ variable }) => variable), ...OTHER_VARIABLES];
  return Object.keys(env)
    .filter((name) => OURS.test(name) && !known.includes(name))
    .map((name) => {
      const meant = didYouMean(name, known);
      const doThis = `${meant === undefined ? '' : `did you mean ${meant}? `}docs/serve.md lists them; take this one away`;
      return { code: 'SETTING_UNKNOWN', path: name, says: 'there is no such setting', doThis };
    });
}

/** An address other machines reach, without anything that asks who is there, unless somebody says so. */
function tooOpen(host: string, token: string | null, isOpenToAnyone: boolean, at: Named | null): readonly InputError[] {
  if (isLoopback(host) || token !== null || isOpenToAnyone) return [];
  const says = `other machines may reach ${host}, and there is no token`;
  const doThis = 'set OVENWARD_TOKEN_FILE or OVENWARD_TOKEN, or add --open-to-anyone if everybody may use it';
  return [{ code: 'SETTING_WRONG', path: at?.name ?? '', says, doThis }];
}

export function readSettings(flags: Flags, isOpenToAnyone: boolean, env: Environment): ServeSettings {
  const errors: InputError[] = [];
  const taken = <T>(setting: Setting<T>): T => {
    const said = named(setting, flags, env);
    if (said === null) return setting.usual(env);
    const reading = setting.read(said.text);
    if ('value' in reading) return reading.value;
    errors.push({ code: 'SETTING_WRONG', path: said.name, says: reading.says, doThis: reading.doThis });
    return setting.usual(env);
  };
  const all = SERVE_SETTINGS;
  const file = named(all.tokenFile, flags, env);
  const isFlag = flags[all.tokenFile.variable] !== undefined;
  const found = tokenFrom(isFlag ? null : named(all.token, flags, env), file);
  errors.push(...found.errors);
  const settings = {
    port: taken(all.port),
    host: taken(all.host),
    token: found.token,
    tokenFile: file?.text ?? null,
    store: taken(all.store),
    threads: taken(all.threads),
    places: taken(all.places),
    mostSeconds: taken(all.mostSeconds),
    usualSeconds: taken(all.usualSeconds),
    requestsPerMinute: taken(all.requestsPerMinute),
    bodyKb: taken(all.bodyKb),
    graceSeconds: taken(all.graceSeconds),
    keepDays: taken(all.keepDays),
    logLevel: taken(all.logLevel),
    timeZone: taken(all.timeZone),
  };
  if (found.errors.length === 0) errors.push(...tooOpen(settings.host, found.token, isOpenToAnyone, named(all.host, flags, env)));
  errors.push(...unknownVariables(env));
  if (errors.length > 0) throw new BadInput('settings', errors);
  // Whoever lowers the most without a word about the usual wants that lowered too.
  return { ...settings, usualSeconds: Math.min(settings.usualSeconds, settings.mostSeconds) };
}

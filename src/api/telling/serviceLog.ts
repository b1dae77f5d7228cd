// The log of the service: one line of JSON for each thing told, to standard error or wherever a test wants it. Made by `ovenward serve`.
import { type DestinationStream, destination, type Logger, pino } from 'pino';

export const LOG_LEVELS = ['debug', 'info', 'warn', 'error', 'silent'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

export type ServiceLogOptions = {
  /** The least that is told. Default info. */
  readonly level?: LogLevel;
  /** Default: standard error. */
  readonly to?: DestinationStream;
};

const STANDARD_ERROR = 2;

type Told = { readonly type: string; readonly message: string; readonly stack: string | undefined };

/** Of a fault its kind, words and stack: what else hangs on it may hold what somebody sent. */
function faultTold(fault: unknown): Told {
  if (fault instanceof Error) return { type: fault.name, message: fault.message, stack: fault.stack };
  return { type: typeof fault, message: String(fault), stack: undefined };
}

export function serviceLog({ level = 'info', to }: ServiceLogOptions = {}): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
    serializers: { err: faultTold },
  };
  // Written at once: the last line before an end is the one somebody will look for.
  return pino(options, to ?? destination({ dest: STANDARD_ERROR, sync: true }));
}

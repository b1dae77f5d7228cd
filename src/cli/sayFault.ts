// What people see when the fault is ours: short, with what a report needs. The stack only under OVENWARD_DEBUG=1.

function nameAndMessage(error: unknown): string {
  return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
}

export function sayFault(error: unknown, version: string, isDebugging: boolean): string {
  const lines = [
    'This is a fault of ovenward, not of your input.',
    `  ${nameAndMessage(error)}`,
    `  ovenward ${version}, Node ${process.version}, ${process.platform} ${process.arch}`,
    'Please report it to whoever keeps your copy of ovenward: the command, these lines and, if you may share it, the scenario.',
  ];
  if (!isDebugging) lines.push('OVENWARD_DEBUG=1 before the command shows where it happened.');
  else if (error instanceof Error && error.stack !== undefined) lines.push(error.stack);
  return `${lines.join('\n')}\n`;
}

// Finds the shared parts of a document by reference. Used by the page.
import type { Answer, OpenapiDocument, Parameter, Ref } from '../openapiShape.ts';

function nameIn({ $ref }: Ref): string {
  return $ref.slice($ref.lastIndexOf('/') + 1);
}

function found<T>(parts: Readonly<Record<string, T>>, ref: Ref): T {
  const part = parts[nameIn(ref)];
  if (part === undefined) throw new Error(`The document refers to ${ref.$ref} and has no such part`);
  return part;
}

export function parameterOf({ components }: OpenapiDocument, ref: Ref): Parameter {
  return found(components.parameters, ref);
}

export function answerOf({ components }: OpenapiDocument, answer: Answer | Ref): Answer {
  return '$ref' in answer ? found(components.responses, answer) : answer;
}

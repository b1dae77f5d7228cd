// The parts of OpenAPI 3.1 this service uses, as types: what the files of paths hold and the page of the document reads.

/** A JSON Schema of the 2020-12 dialect, as data. */
export type Schema = { readonly [key: string]: unknown };

export type Ref = { readonly $ref: string };

export type Example = { readonly summary: string; readonly value: unknown };

export type Media = { readonly schema: Schema; readonly examples?: Readonly<Record<string, Example>> };

export type Content = Readonly<Record<string, Media>>;

export type Parameter = {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly required?: true;
  readonly description: string;
  readonly schema: Schema;
  readonly example?: unknown;
};

export type Header = { readonly description: string; readonly schema: Schema };

/** Which operation can follow an answer, and what it takes from it (OpenAPI 3.1.1, section 4.8.20, Link Object). */
export type Link = {
  readonly operationId: string;
  readonly description: string;
  readonly parameters: Readonly<Record<string, string>>;
};

export type Answer = {
  readonly description: string;
  readonly headers?: Readonly<Record<string, Ref>>;
  readonly content?: Content;
  readonly links?: Readonly<Record<string, Link>>;
};

export type RequestBody = { readonly description: string; readonly required: boolean; readonly content: Content };

/** Ways to show who asks, any of which will do; one that is empty asks for nothing. */
type Security = readonly Readonly<Record<string, readonly string[]>>[];

export type Operation = {
  readonly operationId: string;
  readonly tags: readonly [string];
  readonly summary: string;
  readonly description?: string;
  readonly parameters?: readonly Ref[];
  readonly requestBody?: RequestBody;
  /** Where it is other than for the document as a whole. */
  readonly security?: Security;
  readonly responses: Readonly<Record<string, Answer | Ref>>;
};

export const METHODS = ['get', 'put', 'post', 'delete'] as const;
export type Method = (typeof METHODS)[number];
export type PathItem = { readonly [method in Method]?: Operation };
export type Paths = Readonly<Record<string, PathItem>>;

export type OpenapiDocument = {
  readonly openapi: '3.1.1';
  readonly info: {
    readonly title: string;
    readonly version: string;
    readonly summary: string;
    readonly description: string;
    readonly license: { readonly name: string; readonly identifier: string };
  };
  readonly jsonSchemaDialect: string;
  readonly servers: readonly { readonly url: string; readonly description: string }[];
  readonly security: Security;
  readonly tags: readonly { readonly name: string; readonly description: string }[];
  readonly paths: Paths;
  readonly components: {
    readonly schemas: Readonly<Record<string, Schema>>;
    readonly parameters: Readonly<Record<string, Parameter>>;
    readonly headers: Readonly<Record<string, Header>>;
    readonly responses: Readonly<Record<string, Answer>>;
    readonly securitySchemes: Readonly<Record<string, Schema>>;
  };
};

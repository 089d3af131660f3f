/** A JSON Schema (draft 2020-12) of an answer or of a part of one, as plain data. */
export interface AnswerSchema {
  readonly $schema?: string;
  readonly $id?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, AnswerSchema>>;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly pattern?: string;
  readonly items?: AnswerSchema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly properties?: Readonly<Record<string, AnswerSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | AnswerSchema;
  readonly anyOf?: readonly AnswerSchema[];
}

/** Named parts of an object, as the functions of `answer-parts.ts` make them. */
export type AnswerFields = Readonly<Record<string, AnswerSchema>>;

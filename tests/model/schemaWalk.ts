// Documents drawn from the project's schema, and a walk along a document by the schema: whatever the schema comes to have is
// drawn and walked by itself, so that tests need no list of the document's parts.
import fc from 'fast-check';
import * as v from 'valibot';
import { type Project, projectSchema } from '../../src/model/project';
import { fabricId, id, pictureId } from '../../src/model/schemaParts';

/** As much of a Valibot schema as is walked here. */
interface Schema {
  readonly type: string;
  readonly pipe?: readonly unknown[];
  readonly wrapped?: Schema;
  readonly item?: Schema;
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
}

const OPTIONAL = new Set(['optional', 'exact_optional']);

/** Ids of pictures that drawn documents name. */
const SOME_PICTURES = ['a', 'b', 'c', 'd', 'e', 'f'].map((digit) => digit.repeat(64));

/** Documents in the shape of the schema, with every optional part now there and now not; counts and references need not fit. */
export function documents(fabrics: readonly string[]): fc.Arbitrary<Project> {
  return drawn(projectSchema as unknown as Schema, fabrics) as fc.Arbitrary<Project>;
}

/** What a list holds: its last schema, after its length has been looked at. */
function itemOf(schema: Schema): Schema {
  const lists = (schema.pipe ?? []).filter((one) => (one as Schema).type === 'array') as Schema[];
  return lists.at(-1)!.item!;
}

function drawn(schema: Schema, fabrics: readonly string[]): fc.Arbitrary<unknown> {
  if ((schema as unknown) === fabricId) return fc.constantFrom(...fabrics);
  if ((schema as unknown) === pictureId) return fc.constantFrom(...SOME_PICTURES);
  if (schema.type === 'nullable') return fc.option(drawn(schema.wrapped!, fabrics), { freq: 3 });
  if (OPTIONAL.has(schema.type)) return drawn(schema.wrapped!, fabrics);
  switch (schema.type) {
    case 'strict_object': {
      const entries = Object.entries(schema.entries!);
      const must = entries.filter(([, one]) => one.type !== 'exact_optional').map(([key]) => key);
      const model = Object.fromEntries(entries.map(([key, one]) => [key, drawn(one, fabrics)]));
      return fc.record(model, { requiredKeys: must });
    }
    case 'array':
      return fc.array(drawn(itemOf(schema), fabrics), { maxLength: 3 });
    case 'variant':
      return fc.oneof(...(schema.options as Schema[]).map((one) => drawn(one, fabrics)));
    case 'picklist':
      return fc.constantFrom(...schema.options!);
    case 'literal':
      return fc.constant(schema.literal);
    case 'string':
      return fc.constantFrom('one', 'two', 'three');
    case 'number':
      return fc.nat(9);
    case 'boolean':
      return fc.boolean();
    default:
      throw new Error(`schemaWalk: no way to draw ${schema.type}`);
  }
}

export interface Mention {
  readonly path: string;
  readonly id: string;
  /** Whether the schema says that a fabric is meant, or a picture. */
  readonly fabric: boolean;
  readonly picture: boolean;
}

/** Every id in the document, as the schema has them, with its path. */
export function mentions(document: unknown): Mention[] {
  return walked(projectSchema as unknown as Schema, document, '');
}

function walked(schema: Schema, value: unknown, path: string): Mention[] {
  if (value === null || value === undefined) return [];
  const is = schema as unknown;
  if (is === fabricId || is === id || is === pictureId)
    return [{ path, id: value as string, fabric: is === fabricId, picture: is === pictureId }];
  switch (schema.type) {
    case 'nullable':
    case 'optional':
    case 'exact_optional':
      return walked(schema.wrapped!, value, path);
    case 'strict_object':
      return Object.entries(schema.entries!).flatMap(([key, one]) =>
        walked(one, (value as Record<string, unknown>)[key], path === '' ? key : `${path}.${key}`),
      );
    case 'array':
      return (value as unknown[]).flatMap((one, at) => walked(itemOf(schema), one, `${path}[${at}]`));
    case 'variant': {
      const fits = (schema.options as Schema[]).find((one) =>
        v.is(one.entries!.kind as unknown as v.GenericSchema, (value as { kind: unknown }).kind),
      );
      return walked(fits!, value, path);
    }
    default:
      return [];
  }
}

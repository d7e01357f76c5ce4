/** What an address may say, field by field; anything else in it is as if it were not there. */
export type Fields = Readonly<Record<string, RegExp>>;
export type Query<F extends Fields> = { readonly [K in keyof F]?: string };
type Given = Readonly<Record<string, string | readonly string[] | undefined>>;

export const uuidField = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
export const dayField = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
export const nameField = /^[\w./ -]{1,60}$/;
/** What somebody looks for. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is kept out
export const textField = /^[^\u0000-\u001f\u007f]{1,120}$/;
export const oneOf = (words: readonly string[]): RegExp => new RegExp(`^(${words.join("|")})$`);

/** A day that the calendar has: 2026-02-30 has the form, and is none. */
const isPossible = (pattern: RegExp, value: string): boolean => {
  if (pattern !== dayField) return true;
  const at = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(value);
};

export const readQuery = <const F extends Fields>(fields: F, given: Given): Query<F> => {
  const read = Object.entries(fields).flatMap(([name, pattern]) => {
    const value = given[name];
    const text = typeof value === "string" ? value.trim() : "";
    return pattern.test(text) && isPossible(pattern, text) ? [[name, text] as const] : [];
  });
  return Object.fromEntries(read) as Query<F>;
};

/** The address of a list with these filters. A change of filter begins at the first page: say `after` and `before` anew. */
export const addressOf = (path: string, query: Readonly<Record<string, string | undefined>>): string => {
  const said = Object.entries(query).flatMap(([name, value]) => (value ? [[name, value]] : []));
  return said.length === 0 ? path : `${path}?${new URLSearchParams(said)}`;
};

/** The same filters but for some, from the first page on. */
export const changed = <Q extends Readonly<Record<string, string | undefined>>>(
  query: Q,
  change: Readonly<Record<string, string | undefined>>,
): Readonly<Record<string, string | undefined>> => ({
  ...query,
  after: undefined,
  before: undefined,
  ...change,
});

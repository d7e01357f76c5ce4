/** Every text of a value with the path to it: "customer.addressLines.0". */
export function* contentTexts(
  value: unknown,
  path: readonly string[] = [],
): Generator<readonly [path: string, text: string]> {
  if (typeof value === "string") yield [path.join("."), value];
  else if (value !== null && typeof value === "object")
    for (const [key, inner] of Object.entries(value)) {
      // The keys of translations are sentences that are printed; those of the schema are in the font anyway.
      yield [[...path, "…"].join("."), key];
      yield* contentTexts(inner, [...path, key.length > 40 ? `${key.slice(0, 40)}…` : key]);
    }
}

import canonicalize from "canonicalize";

/**
 * The one text of a JSON value (RFC 8785): what is stored is this text, and what is hashed is what is stored.
 * Throws for what JSON cannot say (undefined, NaN, an infinity): that is a defect of the caller, never data.
 */
export const canonical = (value: unknown): string => {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError("This value has no JSON text.");
  return text;
};

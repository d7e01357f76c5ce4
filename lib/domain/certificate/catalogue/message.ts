import type { TextKey } from "./catalogue";

/** A sentence before it is in a language: a text of the catalogue with what stands in its places, or several in a row. */
export type Message =
  | { readonly say: TextKey; readonly with?: Readonly<Record<string, Said>> }
  | { readonly sayAll: readonly Said[]; readonly between: string };

/** What stands in a place: a figure or name as it is, or a sentence of its own. */
export type Said = string | Message;

/** A structure some of whose texts are still messages. */
export type Draft<T> = T extends string
  ? T | Message
  : T extends readonly (infer Each)[]
    ? readonly Draft<Each>[]
    : T extends object
      ? { readonly [Key in keyof T]: Draft<T[Key]> }
      : T;

export const say = (key: TextKey, places?: Readonly<Record<string, Said>>): Message =>
  places ? { say: key, with: places } : { say: key };

export const sayAll = (parts: readonly Said[], between = " "): Message => ({ sayAll: parts, between });

/** Written by a person, or recorded as it stood: within a sentence marked as such, and never translated. */
export const given = (text: string): Message => say("given", { text });

/** The same as a whole line of its own. */
export const givenWhole = (text: string): Message => say("given.whole", { text });

export const isMessage = (value: object): value is Message => "say" in value || "sayAll" in value;

import type { DccProblem } from "@/lib/files/dcc/dcc-certificate";
import type { Draw } from "./draws";
import { isLeaf, type Tag, tagsOf } from "./xml-source";

/** neutral: read with the same content. refused: by one of the codes, at one of the paths (null: before there are paths). */
export type Mutant =
  | { readonly expect: "neutral"; readonly bytes: Uint8Array; readonly what: string }
  | {
      readonly expect: "refused";
      readonly bytes: Uint8Array;
      readonly what: string;
      readonly codes: readonly DccProblem["code"][];
      readonly paths: readonly string[] | null;
    };

export type Mutation = (text: string, draw: Draw) => Mutant;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
export const neutral = (text: string, what: string): Mutant => ({
  expect: "neutral",
  bytes: bytesOf(text),
  what,
});
export const refused = (
  text: string,
  what: string,
  codes: readonly DccProblem["code"][],
  paths: readonly string[] | null,
): Mutant => ({ expect: "refused", bytes: bytesOf(text), what, codes, paths });

export const local = (tag: Tag): string => tag.name.split(":").at(-1) ?? "";
export const parentPath = (tag: Tag): string => tag.parent?.path ?? "";
/** The comment's foreign XML and signatures may hold anything, so changes there prove nothing. */
export const interpreted = (text: string): readonly Tag[] =>
  tagsOf(text).filter(({ path }) => !/\/(?:comment|Signature)(?:\/|$)/.test(path));
export const leaves = (text: string, name?: RegExp): readonly Tag[] =>
  interpreted(text).filter((tag) => isLeaf(tag) && (name?.test(local(tag)) ?? true));
export const holders = (text: string): readonly Tag[] =>
  interpreted(text).filter(({ children }) => children.length > 0);

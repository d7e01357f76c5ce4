import { unprintableMessage } from "../certificate/printable/unprintable";
import { hiddenCharacterIn } from "../hidden-character";

export type PastedSerial = { readonly line: number; readonly serial: string };

export type SerialsRead =
  | { readonly ok: true; readonly serials: readonly PastedSerial[] }
  | { readonly ok: false; readonly message: string };

// Tabs come along when cells are copied. What cannot be seen stays: it is refused, never taken out in silence.
const tidy = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, " ")
    .replace(/[^\S\ufeff\u2028\u2029]+/g, " ")
    .replace(/^ | $/g, "");

/** Serial numbers are compared as people read them: without case. */
export const serialKey = (serial: string): string => serial.toLowerCase();

/** One serial a line; empty lines are passed over, but counted, so that a message fits what is seen. */
export const pastedSerials = (text: string): readonly PastedSerial[] =>
  text
    .split(/\r\n|\r|\n/)
    .map((raw, index) => ({ line: index + 1, serial: tidy(raw) }))
    .filter(({ serial }) => serial !== "");

/** The serials of a paste, or what is wrong with it, by line. */
export const readSerials = (text: string): SerialsRead => {
  const serials = pastedSerials(text);
  if (serials.length > 200)
    return {
      ok: false,
      message: `${serials.length} serial numbers stand here; at most 200 are taken in at once.`,
    };
  if (serials.length === 0)
    return { ok: false, message: "Write or paste at least one serial number, one per line." };
  for (const { line, serial } of serials) {
    const named = hiddenCharacterIn(serial);
    if (named)
      return {
        ok: false,
        message: `Line ${line} holds a character that cannot be seen: ${named}. Type this serial anew instead of pasting it.`,
      };
    const unprintable = unprintableMessage(serial);
    if (unprintable) return { ok: false, message: `Line ${line}: ${unprintable}` };
  }
  const long = serials.find(({ serial }) => serial.length > 120);
  if (long) return { ok: false, message: `Line ${long.line} is longer than 120 characters.` };
  const first = new Map<string, PastedSerial>();
  const twice: string[] = [];
  for (const pasted of serials) {
    const before = first.get(serialKey(pasted.serial));
    if (before) twice.push(`line ${pasted.line} repeats “${pasted.serial}” of line ${before.line}`);
    else first.set(serialKey(pasted.serial), pasted);
  }
  if (twice.length > 0)
    return {
      ok: false,
      message: `The same serial stands here twice: ${twice.join("; ")}. Take one of each out.`,
    };
  return { ok: true, serials };
};

import { z } from "zod";
import { isCommonPassword } from "./common-passwords";

export const shortestPassword = 12;
export const longestPassword = 200;

/** Length, not composition (OWASP ASVS 5.0, 6.2): no rule asks for a digit or a capital. */
export const NewPassword = z
  .string("Choose a password.")
  .min(shortestPassword, `At least ${shortestPassword} characters; a few words in a row are good.`)
  .max(longestPassword, `At most ${longestPassword} characters.`)
  .refine((typed) => new Set(typed).size >= 5, "Too easy to guess: use more than four different characters.")
  .refine(
    (typed) => !isCommonPassword(typed),
    "This one is guessed first: it stands on every list of guesses.",
  );

/** A password that says whose it is falls at the first guess. */
export const namesItsOwner = (password: string, email: string): boolean => {
  const lower = password.toLowerCase();
  const [local = ""] = email.toLowerCase().split("@");
  return (
    lower === email.toLowerCase() ||
    (local.length >= 4 && lower.startsWith(local) && lower.length < local.length + 8)
  );
};

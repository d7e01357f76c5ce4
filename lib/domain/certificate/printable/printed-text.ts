import type { z } from "zod";
import { hiddenCharacterIn } from "../../hidden-character";
import { seenWhole } from "../../typed-text";
import { unprintableMessage } from "./unprintable";

/** For what stands on a certificate as it is typed: refuses there what the document could not print, and what cannot be seen. */
export const printedText = (text: string, context: z.RefinementCtx<string>): void => {
  seenWhole(text, context);
  const message = hiddenCharacterIn(text) === null ? unprintableMessage(text) : null;
  if (message !== null) context.addIssue({ code: "custom", message });
};

import { z } from "zod";
import { lines, optionalLine, requiredLine } from "../typed-text";

const hash = z.string().regex(/^[0-9a-f]{64}$/, "The page has lost what it showed. Open the link again.");

const said = {
  answer: z.enum(["agreed", "declined"], "Say whether you agree."),
  /** Of the content that was on the screen. */
  contentHash: hash,
  purchaseOrder: optionalLine(80),
  remark: lines(2000).default(""),
};

export const AgreeByLinkInput = z.strictObject({
  token: z.string().max(100),
  name: requiredLine("Write your name: the agreement is yours.", 120),
  ...said,
});

/** Somebody of the customer who is signed in: their name is known. */
export const AgreeInPortalInput = z.strictObject({ quotation: z.string().max(40), ...said });

/** Said on paper or by telephone, written down by the desk. */
export const RecordAgreementInput = z.strictObject({
  quotation: z.string().max(40),
  name: requiredLine("Write who of the customer said it.", 120),
  ...said,
  remark: lines(2000).pipe(
    z.string().min(3, "Write how it came: by telephone, on paper, by mail of which day."),
  ),
});

import { z } from "zod";

/** English always stands; one more language is one more word here and one more column of the catalogue. */
export const FurtherLanguage = z.enum(["de"]);
export type FurtherLanguage = z.infer<typeof FurtherLanguage>;
export const DocumentLanguage = z.enum(["en", ...FurtherLanguage.options]);
export type DocumentLanguage = z.infer<typeof DocumentLanguage>;

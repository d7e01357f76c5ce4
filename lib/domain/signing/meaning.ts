/** What a signature means: on the form, on the certificate, and in the record (21 CFR 11.50(a)(3), borrowed). */
export const meanings = {
  "reviewed-and-authorised": "I reviewed these results and authorise their release.",
} as const;
export type Meaning = keyof typeof meanings;

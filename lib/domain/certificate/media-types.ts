/** The files of a certificate, by what they are stored and sent as. */
export const mediaTypes = { pdf: "application/pdf", dcc: "application/xml" } as const;

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const orderEvents = {} as const;

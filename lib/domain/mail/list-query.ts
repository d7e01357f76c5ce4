import { type Query, readQuery, uuidField } from "../list/query";

const fields = { after: uuidField, before: uuidField } as const;

export type MailQuery = Query<typeof fields>;

export const readMailQuery = (given: Parameters<typeof readQuery>[1]): MailQuery => readQuery(fields, given);

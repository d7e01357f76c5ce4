import { nameField, type Query, readQuery } from "../list/query";

const fields = { after: nameField, before: nameField } as const;

export type InvoicingQuery = Query<typeof fields>;

export const readInvoicingQuery = (given: Parameters<typeof readQuery>[1]): InvoicingQuery =>
  readQuery(fields, given);

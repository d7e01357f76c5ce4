import { type Query, readQuery, textField, uuidField } from "../list/query";

const fields = { find: textField, after: uuidField, before: uuidField } as const;

export type CustomerQuery = Query<typeof fields>;

export const readCustomerQuery = (given: Parameters<typeof readQuery>[1]): CustomerQuery =>
  readQuery(fields, given);

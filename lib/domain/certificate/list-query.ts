import { dayField, nameField, oneOf, type Query, readQuery, textField, uuidField } from "../list/query";

const fields = {
  q: textField,
  customer: uuidField,
  only: oneOf(["pending"]),
  from: dayField,
  to: dayField,
  after: nameField,
  before: nameField,
} as const;

export type CertificateQuery = Query<typeof fields>;

export const readCertificateQuery = (given: Parameters<typeof readQuery>[1]): CertificateQuery =>
  readQuery(fields, given);

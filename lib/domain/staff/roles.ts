export const roles = [
  "front-desk",
  "technician",
  "signatory",
  "quality-manager",
  "customer",
  "customer-orderer",
  "customer-manager",
] as const;
export type Role = (typeof roles)[number];
/** Of somebody of a customer: reads; may also order and answer; may also invite and set. */
export const customerRoles = [
  "customer",
  "customer-orderer",
  "customer-manager",
] as const satisfies readonly Role[];

export const roleLabels: Readonly<Record<Role, string>> = {
  "front-desk": "Front desk",
  technician: "Technician",
  signatory: "Signatory",
  "quality-manager": "Quality manager",
  customer: "Customer",
  "customer-orderer": "Customer, may order and answer",
  "customer-manager": "Customer, may invite colleagues",
};

export const isRole = (value: string): value is Role => (roles as readonly string[]).includes(value);

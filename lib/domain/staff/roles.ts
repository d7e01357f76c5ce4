export const roles = ["front-desk", "technician", "signatory", "quality-manager", "customer"] as const;
export type Role = (typeof roles)[number];

export const roleLabels: Readonly<Record<Role, string>> = {
  "front-desk": "Front desk",
  technician: "Technician",
  signatory: "Signatory",
  "quality-manager": "Quality manager",
  customer: "Customer",
};

export const isRole = (value: string): value is Role => (roles as readonly string[]).includes(value);

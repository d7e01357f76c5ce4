import { isRole, roleLabels } from "./roles";

/** Roles of one person in a line, each word once: "Customer, may order and answer, may invite colleagues". */
export const rolesText = (roles: readonly string[]): string =>
  [...new Set(roles.flatMap((role) => (isRole(role) ? roleLabels[role] : role).split(", ")))].join(", ");

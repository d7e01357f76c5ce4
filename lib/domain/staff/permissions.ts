import type { Role } from "./roles";

const staff = ["front-desk", "technician", "signatory", "quality-manager"] as const satisfies readonly Role[];

/**
 * Who may do what: the whole policy is this table. Operations check it before any query, views before they answer,
 * pages only to decide what to show.
 */
export const permissions = {
  "laboratory.read": staff,
  "laboratory.configure": ["quality-manager"],
  "scope.record": ["quality-manager"],
  /** The keys that seal documents: take out of use, revoke. */
  "seal.manage": ["quality-manager"],
  "procedure.draft": ["signatory", "quality-manager"],
  /** By a person who did not draft it. */
  "procedure.approve": ["signatory", "quality-manager"],
  "person.read": ["quality-manager"],
  "person.manage": ["quality-manager"],
  /** Who may sign off and state opinions, and for what: ISO/IEC 17025 6.2.6. Never oneself. */
  "person.authorise": ["quality-manager"],
  "customer.record": ["front-desk", "quality-manager"],
  "order.record": ["front-desk", "quality-manager"],
  "order.accept": ["front-desk", "quality-manager"],
  /** What was said about an order. */
  "order.note": staff,
  /** The laboratory's list of prices. */
  "price.record": ["front-desk", "quality-manager"],
  /** What is chargeable, handed to whoever writes invoices. */
  "invoicing.record": ["front-desk", "quality-manager"],
  "sensor.receive": ["front-desk", "technician"],
  "sensor.release": ["front-desk"],
  /** Work stands still, and the customer is asked. */
  "hold.place": staff,
  "hold.release": ["front-desk", "quality-manager", "signatory"],
  /** Where a sensor goes, ISO/IEC 17025 7.4.1. */
  "custody.record": ["front-desk", "technician", "quality-manager"],
  /** Places, and how long a sensor is kept. */
  "storage.configure": ["front-desk", "quality-manager"],
  /** ISO/IEC 17025 7.9, 7.10. */
  "nonconformity.open": staff,
  "nonconformity.decide": ["signatory", "quality-manager"],
  "equipment.record": ["technician", "quality-manager"],
  "calibration.record": ["quality-manager"],
  /** By a person who did not record it. */
  "calibration.accept": ["signatory", "quality-manager"],
  /** Whom the laboratory buys calibrations from, ISO/IEC 17025 6.6.2. */
  "provider.record": ["quality-manager"],
  /** What an external provider measured of a customer's sensor, from its certificate, ISO/IEC 17025 7.8.2.1 p. */
  "provider-report.record": ["front-desk", "technician", "quality-manager"],
  /** By a person who did not record it. */
  "provider-report.decide": ["signatory", "quality-manager"],
  "furnace.record": ["technician", "quality-manager"],
  /** Of a characterisation or an inhomogeneity test, by a person who did not measure it. */
  "furnace.accept": ["signatory", "quality-manager"],
  "run.perform": ["technician"],
  /** A sensor is measured once more: why, said before the first reading. */
  "run.authorise-repeat": ["signatory", "quality-manager"],
  /** Which row by whom is the gate's policy. */
  "gate.override": ["technician", "signatory", "quality-manager"],
  "evidence.export": ["technician", "signatory", "quality-manager"],
  "review.read": ["signatory", "quality-manager", "technician"],
  "review.decide": ["signatory"],
  /** ISO/IEC 17025 7.8.7; whoever is authorised for it. */
  "opinion.write": ["signatory", "quality-manager"],
  "review.second-look": ["signatory", "quality-manager"],
  "certificate.read": staff,
  /** To ask that a certificate be followed by another one, ISO/IEC 17025 7.8.8; signing that is a signatory's. */
  "certificate.amend": ["signatory", "quality-manager"],
  "certificate.withdraw": ["signatory", "quality-manager"],
  "audit.read": ["signatory", "quality-manager"],
  "mail.manage": ["quality-manager"],
  "portal.read": ["customer"],
  /** Request work, answer questions, agree to an offer. */
  "portal.order": ["customer-orderer"],
  /** Invite colleagues, keep addresses, intervals, tokens. */
  "portal.manage": ["customer-manager"],
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Permission = keyof typeof permissions;

/** Own keys only, so that a made-up name such as "constructor" is no permission. */
export const may = (held: readonly Role[], permission: Permission): boolean =>
  Object.hasOwn(permissions, permission) &&
  (permissions[permission] as readonly Role[]).some((role) => held.includes(role));

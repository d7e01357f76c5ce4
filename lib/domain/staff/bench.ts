/**
 * What a session at the bench may do: record what is done there, and read. Whatever is not named is refused, so that a
 * permission made later is closed at the bench until somebody has thought about it. It has no idle timeout and stands
 * open beside a furnace: it never signs, accepts, approves, sets aside, or touches people and settings.
 */
export const benchPermissions: readonly string[] = [
  "laboratory.read",
  "order.record",
  "order.note",
  "sensor.receive",
  "hold.place",
  "custody.record",
  "nonconformity.open",
  "equipment.record",
  "provider-report.record",
  "furnace.record",
  "run.perform",
  "evidence.export",
  "review.read",
  "certificate.read",
];

/** Named one by one, so that nothing is on neither list; a test holds the two against all permissions. */
export const benchMayNot: readonly string[] = [
  "laboratory.configure",
  "scope.record",
  "seal.manage",
  "procedure.draft",
  "procedure.approve",
  "person.read",
  "person.manage",
  "person.authorise",
  "customer.record",
  "price.record",
  "invoicing.record",
  "hold.release",
  "storage.configure",
  "nonconformity.decide",
  "order.accept",
  "sensor.release",
  "calibration.record",
  "calibration.accept",
  "provider.record",
  "provider-report.decide",
  "furnace.accept",
  "gate.override",
  "run.authorise-repeat",
  "review.decide",
  "certificate.amend",
  "certificate.withdraw",
  "opinion.write",
  "review.second-look",
  "audit.read",
  "mail.manage",
  "portal.read",
  "portal.order",
  "portal.manage",
];

export const benchMay = (permission: string): boolean => benchPermissions.includes(permission);

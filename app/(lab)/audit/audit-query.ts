export type AuditQuery = {
  readonly entityKind?: string | undefined;
  readonly entityId?: string | undefined;
  readonly actorId?: string | undefined;
  readonly before?: string | undefined;
};

const short = /^[\w:. -]{1,80}$/;

/** Only what could be a filter; anything else in the address is as if it were not there. */
export const readAuditQuery = (
  params: Readonly<Record<string, string | string[] | undefined>>,
): AuditQuery => {
  const one = (name: string, pattern: RegExp): string | undefined => {
    const value = params[name];
    return typeof value === "string" && pattern.test(value) ? value : undefined;
  };
  return {
    entityKind: one("kind", short),
    entityId: one("id", short),
    actorId: one("by", short),
    before: one("before", /^\d{1,15}$/),
  };
};

export const auditAddress = ({ entityKind, entityId, actorId, before }: AuditQuery): string => {
  const params = new URLSearchParams();
  if (entityKind) params.set("kind", entityKind);
  if (entityId) params.set("id", entityId);
  if (actorId) params.set("by", actorId);
  if (before) params.set("before", before);
  return params.size > 0 ? `/audit?${params}` : "/audit";
};

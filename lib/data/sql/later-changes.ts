import type { Tx } from "../in-scope";

export type LaterChangeRow = {
  readonly kind: string;
  readonly tag: string;
  readonly word: string;
  readonly certificate: string;
  readonly day: Date | null;
};

/**
 * What became of equipment and of the calibrations that were used, as known on a day: a state that is not in service, a
 * newer calibration, a rejection, a suspended provider. State and suspension are those of now: their past is in the log.
 */
export const laterChangeRows = (
  tx: Tx,
  equipmentIds: readonly string[],
  calibrationIds: readonly string[],
  on: string,
): Promise<LaterChangeRow[]> =>
  tx.$queryRaw`
    WITH used AS (
      SELECT c.*, e.tag FROM calibration c JOIN equipment e ON e.id = c.equipment_id
       WHERE c.id = ANY (${[...calibrationIds]}::uuid[])
    ), last_decision AS (
      SELECT DISTINCT ON (d.calibration_id) d.calibration_id, d.decision, d.decided_at
        FROM calibration_decision d
       WHERE d.decided_at < ${on}::date + 1
         AND d.calibration_id IN (SELECT n.id FROM calibration n JOIN used u ON u.equipment_id = n.equipment_id)
       ORDER BY d.calibration_id, d.id DESC
    )
    SELECT 'equipment-state' AS kind, e.tag, e.state AS word, '' AS certificate, NULL::date AS day
      FROM equipment e WHERE e.id = ANY (${[...equipmentIds]}::uuid[]) AND e.state NOT IN ('in-service', 'verified')
    UNION ALL
    SELECT 'calibrated-again', u.tag, coalesce(l.decision, 'undecided'), n.certificate, n.performed_on
      FROM used u JOIN calibration n ON n.equipment_id = u.equipment_id
      LEFT JOIN last_decision l ON l.calibration_id = n.id
     WHERE n.performed_on > u.performed_on AND n.performed_on <= ${on}::date AND n.recorded_at < ${on}::date + 1
    UNION ALL
    SELECT 'rejected', u.tag, '', u.certificate, (l.decided_at AT TIME ZONE 'UTC')::date
      FROM used u JOIN last_decision l ON l.calibration_id = u.id AND l.decision = 'rejected'
    UNION ALL
    SELECT 'provider-suspended', u.tag, p.name, u.certificate, NULL
      FROM used u JOIN provider p ON p.id = u.provider_id AND p.state = 'suspended'
    ORDER BY tag, kind, day, certificate`;

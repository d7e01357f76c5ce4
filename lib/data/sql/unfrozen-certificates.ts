import type { Tx } from "../in-scope";

/** Certificates with a measured result that has no place in the graph, oldest first: signed before there was one. */
export const unfrozenCertificates = (tx: Tx): Promise<{ id: string; number: string }[]> =>
  tx.$queryRaw`
    SELECT c.id::text AS id, c.number FROM certificate c
     WHERE EXISTS (
       SELECT FROM result r
        WHERE r.evaluation_id = c.evaluation_id AND r.sensor_id = c.sensor_id AND r.state = 'measured'
          AND NOT EXISTS (SELECT FROM trace_node n WHERE n.kind = 'result' AND n.record_id = r.id::text))
     ORDER BY c.signed_at, c.number`;

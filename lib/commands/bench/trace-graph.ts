import type pg from "pg";

/**
 * A graph of traceability of depth six, invented, written by set-based SQL: result → run at a setpoint → standards as
 * used → their calibrations → the standards behind these → national standards → SI. Twelve results a run at a setpoint,
 * five standards a run, a recalibration of each standard for every thousand results.
 */

export const resultsPerRun = 12;
const resultsPerCalibration = 1_000;
const equipment = 20;

/** Ids follow from what a node is, so that an edge needs no look-up. */
const idOf = (kind: string, number: string): string => `md5('${kind} ' || (${number}))::uuid`;

const nodes = (kind: string, height: number, from: string, to: string, key: string): string => `
  INSERT INTO trace_node (id, kind, record_id, title, detail, facts, height, frozen_at)
  SELECT ${idOf(key, "n")}, '${kind}', '${key} ' || n, '${key} ' || n, 'invented for the bench', '{}', ${height}, now()
    FROM generate_series(${from}, ${to}) AS n`;

const edges = (from: string, to: string, role: string, source: string): string => `
  INSERT INTO trace_edge (from_id, to_id, role, certificate, issuer, route, performed_on, valid_until, expanded, unit,
                          coverage_factor, at_celsius, frozen_at)
  SELECT ${from}, ${to}, '${role}', 'B-' || n, 'Bench institute', 'accredited', '2026-01-01', '2027-01-01', 0.3, '°C',
         2, 600, now() FROM ${source}`;

/** Calibrations there are once so many results are there: each piece of equipment, again and again. */
const calibrationsOf = (results: number): number => equipment * Math.ceil(results / resultsPerCalibration);

/**
 * Adds results `done + 1` to `wanted`, with what they stand on. One transaction, as sign-off: the guard of the edges is
 * on; foreign keys are not asked row by row, since every id is made the same way on both sides.
 */
export const growGraph = async (admin: pg.Client, done: number, wanted: number): Promise<void> => {
  const [oldCalibrations, calibrations] = [done === 0 ? 0 : calibrationsOf(done), calibrationsOf(wanted)];
  const [oldRuns, runs] = [Math.ceil(done / resultsPerRun), Math.ceil(wanted / resultsPerRun)];
  const freshCalibrations = `generate_series(${oldCalibrations + 1}, ${calibrations}) AS n`;
  // Runs move on through the calibrations as time does; the five they use are of five pieces of equipment.
  const used = `(((n * ${resultsPerRun}) / ${resultsPerCalibration}) * ${equipment} + (n * 3 + k * 4) % ${equipment}) % ${calibrations} + 1`;
  const statements = [
    "BEGIN",
    "SET LOCAL session_replication_role = replica",
    ...(done === 0
      ? [
          nodes("si", 0, "1", "1", "si"),
          nodes("national-standard", 1, "1", "10", "national"),
          edges(idOf("national", "n"), idOf("si", "1"), "parent", "generate_series(1, 10) AS n"),
        ]
      : []),
    nodes("standard", 2, String(oldCalibrations + 1), String(calibrations), "behind"),
    edges(idOf("behind", "n"), idOf("national", "n % 10 + 1"), "parent", freshCalibrations),
    nodes("calibration", 3, String(oldCalibrations + 1), String(calibrations), "calibration"),
    edges(idOf("calibration", "n"), idOf("behind", "n"), "parent", freshCalibrations),
    nodes("standard", 4, String(oldCalibrations + 1), String(calibrations), "standard"),
    edges(idOf("standard", "n"), idOf("calibration", "n"), "calibration", freshCalibrations),
    nodes("run", 5, String(oldRuns + 1), String(runs), "run"),
    edges(
      idOf("run", "n"),
      idOf("standard", used),
      "reference",
      `generate_series(${oldRuns + 1}, ${runs}) AS n, generate_series(0, 4) AS k`,
    ),
    nodes("result", 6, String(done + 1), String(wanted), "result"),
    edges(
      idOf("result", "n"),
      idOf("run", `(n - 1) / ${resultsPerRun} + 1`),
      "run",
      `generate_series(${done + 1}, ${wanted}) AS n`,
    ),
    "COMMIT",
    "VACUUM (ANALYZE) trace_node",
    "VACUUM (ANALYZE) trace_edge",
  ];
  for (const statement of statements) await admin.query(statement);
};

/** The record of a result, by its number from 1. */
export const benchResult = (number: number): string => `result ${number}`;

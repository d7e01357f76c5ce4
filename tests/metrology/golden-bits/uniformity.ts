import { axialProfile } from "@/lib/metrology/uniformity/axial-profile";
import { exchangedPositions } from "@/lib/metrology/uniformity/exchanged-positions";
import { immersionProfile } from "@/lib/metrology/uniformity/immersion-profile";
import { inhomogeneityOfScan } from "@/lib/metrology/uniformity/inhomogeneity-of-scan";
import { inhomogeneityOfTwoImmersions } from "@/lib/metrology/uniformity/inhomogeneity-of-two-immersions";
import { stabilityOverTime } from "@/lib/metrology/uniformity/stability-over-time";
import { widenedHalfWidth } from "@/lib/metrology/uniformity/widened-half-width";

const stops = [-30, -20, -10, 0, 10, 20, 30, 30, 20, 10, 0, -10, -20, -30];

/** Made surveys of a furnace, and a thermocouple moved through a gradient. */
export function* uniformity(): Generator<unknown> {
  const readings = stops.map((millimetre, moment) => ({
    millimetre,
    moment,
    probeCelsius: 1000.3 - 0.0004 * millimetre * millimetre + 0.013 * ((moment * 5) % 7),
    monitorCelsius: 998.7 + 0.011 * moment,
  }));
  yield axialProfile({
    ...{ readings, fromMillimetre: -20, toMillimetre: 30 },
    ...{ probeInhomogeneityCelsius: 0.17, meterCelsius: 0.021 },
  });
  yield immersionProfile({
    readings: readings.map(({ millimetre, probeCelsius, monitorCelsius }) => ({
      millimetre: 400 + millimetre,
      probeCelsius,
      monitorCelsius,
    })),
    ...{ limitCelsius: 0.2, meterCelsius: 0.021 },
  });
  yield exchangedPositions({
    readings: [0, 1, 2, 3].flatMap((arrangement) =>
      ["c", "1", "2"].map((place, i) => ({
        ...{ arrangement, place, sensor: `TC-${(i + arrangement) % 3}` },
        celsius:
          700 +
          0.21 * i -
          0.37 * ((i + arrangement) % 3) +
          0.05 * arrangement +
          0.003 * ((i * 5 + arrangement) % 4),
      })),
    ),
    ...{ centre: "c", meterCelsius: 0.02, statedRepeatability: null },
  });
  const record = Array.from({ length: 40 }, (_, minutes) => ({
    minutes,
    celsius: 1100 + 0.0031 * minutes + 0.02 * ((minutes * 7) % 5),
  }));
  yield stabilityOverTime({ readings: record, windowMinutes: 15, meterCelsius: 0.02 });
  const moved = stops.slice(0, 7).map((millimetre, i) => ({
    millimetre,
    microvolt: 10153 + 1.7 * ((i * 3) % 5),
    monitorCelsius: 250 + 0.013 * i,
  }));
  const [first = { millimetre: 0, microvolt: 0 }, , , last = first] = moved;
  const stated = { spanMicrovolt: 9355, meterMicrovolt: 0.3 };
  const scan = inhomogeneityOfScan({ readings: moved, microvoltPerCelsius: 41.2, ...stated });
  yield scan;
  yield inhomogeneityOfTwoImmersions({ first, second: last, ...stated });
  if (scan.ok) yield widenedHalfWidth(scan.value.relativeHalfWidth, scan.value.standardUncertainty);
}

import type { RoomLimits } from "../gate/policy";
import { outsideLimits, type RoomFigures } from "../run/room-figures";
import { type Message, type Said, say, sayAll } from "./catalogue/message";
import type { CertificateContent } from "./content";

/** As printed: tenths of a degree and whole per cent, finer than any U of such an instrument. */
const celsiusText = (value: number): string => value.toFixed(1);
const percentText = (value: number): string => value.toFixed(0);

const span = (what: "celsius" | "percent", values: readonly string[]): Message => {
  const [from = "", to = ""] = [values[0], values.at(-1)];
  return from === to ? say(`room.${what}-one`, { at: from }) : say(`room.${what}`, { from, to });
};

/** From the lowest to the highest that was recorded. */
const inOrder = (values: readonly number[]): readonly number[] =>
  values.toSorted((left, right) => left - right);
const temperatures = (room: readonly RoomFigures[]) =>
  inOrder(room.map(({ celsius }) => celsius)).map(celsiusText);
const humidities = (room: readonly RoomFigures[]) =>
  inOrder(room.flatMap(({ humidity }) => humidity?.percent ?? [])).map(percentText);

const told = (room: readonly RoomFigures[]): Said => {
  const percent = humidities(room);
  return sayAll(
    [span("celsius", temperatures(room)), ...(percent.length > 0 ? [span("percent", percent)] : [])],
    ", ",
  );
};

/** The instrument's U, the larger where two certificates were used. */
const expandedOf = (room: readonly RoomFigures[]): string => {
  const percent = room.flatMap(({ humidity }) => humidity?.expandedPercent ?? []);
  return [
    `${Math.max(...room.map(({ expandedCelsius }) => expandedCelsius))} °C`,
    ...(percent.length > 0 ? [`${Math.max(...percent)} %`] : []),
  ].join(", ");
};

/** 7.8.4.1 b: the room, where it was recorded. */
export const roomCondition = (room: readonly RoomFigures[]): readonly Message[] =>
  room.length === 0
    ? []
    : [
        say("condition.room", {
          told: told(room),
          instrument: [...new Set(room.map(({ instrument }) => instrument))].join(", "),
          expanded: expandedOf(room),
          factor: [...new Set(room.map(({ coverageFactor }) => String(coverageFactor)))].join(", "),
        }),
      ];

const limitsText = ({ fromCelsius, fromPercent, toCelsius, toPercent }: RoomLimits): Message =>
  sayAll(
    [
      say("room.celsius", { from: String(fromCelsius), to: String(toCelsius) }),
      say("room.percent", { from: String(fromPercent), to: String(toPercent) }),
    ],
    ", ",
  );

/** 6.3.3 and 7.8.2.1 n: results that were obtained beyond the procedure's own limits for the room say so. */
export const roomDeviation = (room: readonly RoomFigures[]): readonly Message[] => {
  const outside = room.filter((one) => outsideLimits(one) !== null);
  const limits = outside[0]?.limits;
  return limits ? [say("deviation.room", { limits: limitsText(limits), told: told(room) })] : [];
};

/** The same as figures, for a digital certificate. */
export const roomFiguresOf = (room: readonly RoomFigures[]): Pick<CertificateContent["run"], "room"> => {
  if (room.length === 0) return {};
  const percent = humidities(room);
  return {
    room: {
      celsius: [...new Set(temperatures(room))],
      ...(percent.length > 0 ? { percent: [...new Set(percent)] } : {}),
    },
  };
};

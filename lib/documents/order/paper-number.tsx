import { Text, View } from "@react-pdf/renderer";
import { styles } from "./paper-styles";

/** Advance widths of Source Sans 3 in em: its digits are tabular, its full stop is half a digit. */
const digitWidth = 0.497;
const pointWidth = 0.249;

const decimalsOf = (text: string): number => (text.includes(".") ? text.length - text.indexOf(".") - 1 : 0);

/** Room to leave at the right so that the decimal points of a column stand under each other, pt. */
const decimalRoom = (text: string, column: readonly string[], fontSize: number): number => {
  const most = Math.max(0, ...column.map(decimalsOf));
  const own = decimalsOf(text);
  return fontSize * ((most - own) * digitWidth + (own === 0 && most > 0 ? pointWidth : 0));
};

type AlignedNumberProps = {
  readonly text: string;
  readonly column: readonly string[];
  readonly width: number;
  readonly fontSize: number;
  readonly muted?: boolean;
};

/** One figure of a column, exactly as in the content: aligned by room, never by added characters. */
export const AlignedNumber = ({ text, column, width, fontSize, muted }: AlignedNumberProps) => (
  <View style={{ width, paddingRight: 4 + decimalRoom(text, column, fontSize) }}>
    <Text style={[styles.number, { fontSize }, ...(muted ? [styles.muted] : [])]}>{text}</Text>
  </View>
);

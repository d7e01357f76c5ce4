import { type StyleSheet, Text, View } from "@react-pdf/renderer";
import { styles } from "./styles";
import type { Said } from "./words";

export type TextStyle = Parameters<typeof StyleSheet.create>[0][string];

type SayProps = {
  readonly said: Said;
  readonly style?: TextStyle;
  /** What else sets the further languages apart from the leading one. */
  readonly lesser?: TextStyle;
};

/** The leading language, and each further one below it, lighter. */
export const Say = ({ said, style = {}, lesser = {} }: SayProps) => {
  const [leading, ...further] = said;
  if (further.length === 0) return <Text style={style}>{leading}</Text>;
  return (
    <View>
      <Text style={style}>{leading}</Text>
      {further.map((text) => (
        <Text key={text} style={[style, styles.further, lesser]}>
          {text}
        </Text>
      ))}
    </View>
  );
};

/** A list of sentences, one below the other. */
export const SayAll = ({ of }: { readonly of: readonly Said[] }) =>
  of.map((said) => <Say key={said[0]} said={said} />);

import { Text, View } from "@react-pdf/renderer";
import type { OnPaper } from "./paper";
import { Say } from "./say";
import { styles } from "./styles";
import { inLine } from "./words";

/** 7.8.8: on page one, before anything else is read: which earlier document this one changes, and why. */
export const AmendmentNotice = ({ paper: { content, words } }: OnPaper) => {
  const { amends } = content;
  return amends ? (
    <View style={styles.notice} wrap={false}>
      <Say
        said={words.caption(`amends.${amends.kind}`, { number: amends.number })}
        style={{ ...styles.strong, fontSize: 10.5 }}
        lesser={{ fontSize: 9 }}
      />
      <View style={{ marginTop: 2 }}>
        <Text>
          <Text style={styles.muted}>{inLine(words.caption("reason"))} </Text>
          {words.sentence(amends.reason)[0]}
        </Text>
      </View>
      <Text style={[styles.small, styles.muted, { marginTop: 1 }]}>
        {amends.number} · {words.caption("contentHash")[0]} {amends.contentHash}
      </Text>
    </View>
  ) : null;
};

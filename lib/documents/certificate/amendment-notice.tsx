import { Text, View } from "@react-pdf/renderer";
import type { OnPaper } from "./paper";
import { Say } from "./say";
import { styles } from "./styles";
import { together } from "./words";

/** 7.8.8: on page one, before anything else is read: which earlier document this one changes, and why. */
export const AmendmentNotice = ({ paper: { content, words } }: OnPaper) => {
  const { amends } = content;
  return amends ? (
    <View style={styles.notice} wrap={false}>
      <Say
        said={words.caption(`amends.${amends.kind}`, { number: amends.number })}
        style={styles.blockTitle}
        lesser={{ fontSize: 9.5 }}
      />
      <Say
        said={together(" ", words.caption("reason"), words.sentence(amends.reason))}
        style={{ marginTop: 2 }}
      />
      <Text style={[styles.small, styles.muted, { marginTop: 1 }]}>
        {amends.number} · {words.caption("contentHash")[0]} {amends.contentHash}
      </Text>
    </View>
  ) : null;
};

package org.benchtrail.seal.offline;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.WitnessPolicy.Vouching;
import org.jspecify.annotations.Nullable;

/** What the verifier found, and what it comes to. */
final class VerifyReport {
    /** Holds, and somebody outside vouches for it. */
    static final int HOLDS = 0;

    static final int DOES_NOT_HOLD = 1;

    /** Holds as far as can be told. */
    static final int CANNOT_TELL = 2;

    static final int NO_EXPORT = 3;

    private static final int MOST = 20;

    private final List<Finding> findings = new ArrayList<>();
    private final List<String> told = new ArrayList<>();
    private @Nullable String unreadable;
    private boolean vouched;
    private boolean unsure;

    /**
     * Something that does not hold.
     *
     * @param check in a word
     * @param where file, or stream and place
     */
    record Finding(String check, String where, String sentence) {
        @Override
        public String toString() {
            return check + ": " + where + ": " + sentence;
        }
    }

    /** Of very many the first are kept: what comes after the first change seldom tells more. */
    void found(String check, String where, String sentence) {
        if (findings.size() < MOST) {
            findings.add(new Finding(check, where, sentence));
        }
    }

    void tell(String sentence) {
        told.add(sentence);
    }

    /** Something that cannot be told, whoever vouches. */
    void unsure(String sentence) {
        unsure = true;
        tell(sentence);
    }

    void noExport(String sentence) {
        unreadable = sentence;
    }

    void vouched(Vouching vouching) {
        vouched |= vouching == Vouching.MET;
        tell(
                switch (vouching) {
                    case MET -> "Enough witnesses of your policy signed this head.";
                    case NOT_MET -> "Too few witnesses of your policy signed this head.";
                    case CANNOT_TELL -> "Witnesses signed in a way that cannot be verified here.";
                    case NOBODY_ASKED -> "Signed by the shop alone. Nobody else has seen this head.";
                });
    }

    void contains(long size) {
        vouched = true;
        tell("The earlier head of " + size + " leaves that you gave is contained.");
    }

    /** Holds a tree that is made of leaves against a head that somebody holds, once it has as many of them. */
    void earlier(Frontier tree, VerifyArguments.@Nullable Head earlier) {
        if (earlier == null || tree.size() != earlier.size()) {
            return;
        }
        if (tree.root().equals(earlier.root())) {
            contains(earlier.size());
        } else {
            found(
                    "earlier head",
                    "leaves below " + earlier.size(),
                    "are not those of the head that you hold: the log was rewritten since" + earlier.doubt());
        }
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    int exit() {
        if (unreadable != null) {
            return NO_EXPORT;
        }
        if (!findings.isEmpty()) {
            return DOES_NOT_HOLD;
        }
        return vouched && !unsure ? HOLDS : CANNOT_TELL;
    }

    /** For a program: the exit, the findings, and the sentences of {@link #lines}. */
    String json() {
        ObjectNode answer = JsonNodeFactory.instance.objectNode().put("exit", exit());
        if (unreadable != null) {
            answer.put("unreadable", unreadable);
        }
        ArrayNode all = answer.putArray("findings");
        findings.forEach(finding -> all.addObject()
                .put("check", finding.check)
                .put("where", finding.where)
                .put("sentence", finding.sentence));
        ArrayNode sentences = answer.putArray("told");
        told.forEach(sentences::add);
        return answer.toString();
    }

    /** For people: the result first, then what was found, then what was looked at. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(
                switch (exit()) {
                    case HOLDS -> "Holds.";
                    case DOES_NOT_HOLD -> "Does not hold.";
                    case CANNOT_TELL -> "Holds as far as can be told.";
                    default -> "This is no export: " + unreadable;
                });
        findings.forEach(finding -> lines.add("  " + finding));
        told.forEach(sentence -> lines.add("  " + sentence));
        return lines;
    }
}

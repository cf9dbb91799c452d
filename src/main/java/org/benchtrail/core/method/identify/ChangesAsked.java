package org.benchtrail.core.method.identify;

import java.util.Map;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.text.FieldChecks;

/** What changed before it began: each kind answered. */
public record ChangesAsked(Map<ChangeKind, ChangeAnswer> answers, String note) implements IdentifyFact {
    public ChangesAsked {
        FieldChecks t = new FieldChecks();
        answers = EnumCopies.map(ChangeKind.class, answers);
        for (ChangeKind change : ChangeKind.values()) {
            t.require(
                    answers.containsKey(change),
                    "answers." + change,
                    "Ask whether " + change.words() + " changed: yes, no or unknown.");
        }
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(
                !answers.containsValue(ChangeAnswer.YES) || !note.isEmpty(),
                "note",
                "Say what changed, since one answer is yes.");
        t.done();
    }
}

package org.benchtrail.core.method.identify;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Wording;
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

    /** Of the latest answers; what nobody knows says nothing. */
    @Override
    public List<Sign> signs(JobSheet sheet) {
        boolean latest = sheet.latest(ChangesAsked.class)
                .filter(l -> l.fact().equals(this))
                .isPresent();
        return answers.entrySet().stream()
                .filter(a -> latest && a.getValue() != ChangeAnswer.UNKNOWN)
                .map(a -> Sign.of("changed/" + a.getKey() + "/" + a.getValue()))
                .toList();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(note, Source.REPORTED));
    }
}

package org.benchtrail.core.method.identify;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;

/** What changed before it began: each kind answered. */
public record ChangesAsked(
        Map<ChangeKind, ChangeAnswer> answers, @FreeText String note) implements IdentifyFact {
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

    @Override
    public String told(Telling reader) {
        String changed = those(ChangeAnswer.YES);
        String unknown = those(ChangeAnswer.UNKNOWN);
        String words = changed.isEmpty() ? "nothing known to have changed" : "changed: " + changed;
        return Told.noted(unknown.isEmpty() ? words : words + "; unknown: " + unknown, note);
    }

    private String those(ChangeAnswer answer) {
        return Told.list(
                Stream.of(ChangeKind.values())
                        .filter(kind -> answers.get(kind) == answer)
                        .toList(),
                ChangeKind::words);
    }
}

package org.benchtrail.core.method.theorize;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record ObviousQuestioned(
        Map<Obvious, Inspection> looks, @FreeText String note) implements TheorizeFact {
    public ObviousQuestioned {
        FieldChecks t = new FieldChecks();
        Map<Obvious, Inspection> copy = new EnumMap<>(Obvious.class);
        if (looks != null) {
            copy.putAll(looks);
        }
        for (Obvious obvious : Obvious.values()) {
            t.require(
                    copy.get(obvious) != null,
                    "looks." + obvious,
                    "Question " + obvious.words() + ": in order, suspect or not applicable.");
        }
        looks = Collections.unmodifiableMap(copy);
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    /** What does not apply says why not. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (looks.containsValue(Inspection.NOT_APPLICABLE) && note.isEmpty()) {
            throw new Invalid("note", "Say why what was not looked at does not apply.");
        }
        return List.of();
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }

    @Override
    public Lasts lasts() {
        return Lasts.TICKET;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                Told.list(
                        List.of(Obvious.values()),
                        o -> o.words() + " " + Told.plain(Objects.requireNonNull(looks.get(o)))),
                note);
    }
}

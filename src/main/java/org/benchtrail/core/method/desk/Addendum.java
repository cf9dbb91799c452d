package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** Something added to the papers of a closed ticket: a remark, a better cause, a forgotten part. The ticket stays closed. */
public record Addendum(About about, String text) implements DeskFact {
    /** What it adds to. */
    public enum About {
        REMARK("a remark"),
        CAUSE("a better cause"),
        PART("a forgotten part");

        private final String words;

        About(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Addendum {
        FieldChecks t = new FieldChecks();
        t.require(about != null, "about", "Say what it adds: a remark, a better cause, a forgotten part.");
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Write what is to be added.");
        t.done();
    }

    @Override
    public boolean possibleWhenClosed() {
        return true;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Persons.hands(s.sheet(), actor);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return s.sheet().course().isOpen()
                ? Missing.rule("still-open", "This ticket is open: record it where it belongs.", "step")
                : List.of();
    }

    @Override
    public List<String> story() {
        return List.of(text);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(about.words(), text);
    }
}

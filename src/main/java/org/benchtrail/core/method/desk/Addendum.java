package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * Something added to the papers of a closed ticket: a remark, a better cause, a forgotten part. The ticket stays closed.
 *
 * @param requirement code of the requirement that it adds to, by which it answers what a review asked; null if it is about none
 */
public record Addendum(
        About about, @FreeText String text, @Later @Nullable String requirement) implements DeskFact {
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
        requirement = t.orNull("requirement", requirement, 60);
        t.done();
    }

    /** About no requirement. */
    public Addendum(About about, String text) {
        this(about, text, null);
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
        if (requirement != null && Requirements.of(requirement).isEmpty()) {
            throw new Invalid("requirement", "There is no requirement '" + requirement + "'.");
        }
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
        return Told.noted(about.words() + (requirement == null ? "" : " on " + Told.requirement(requirement)), text);
    }
}

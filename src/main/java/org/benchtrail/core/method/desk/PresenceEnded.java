package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * What the mentor who was present says afterwards. From then on that presence opens nothing any more.
 *
 * @param presence entry number of the start
 * @param stayed whether they stayed until all was done
 * @param saw what they saw
 */
public record PresenceEnded(
        int presence, @Nullable Boolean stayed, @FreeText String saw) implements DeskFact {
    public PresenceEnded {
        FieldChecks t = new FieldChecks();
        t.require(stayed != null, "stayed", "Say whether you stayed until it was done: yes or no.");
        saw = t.required("saw", saw, FieldChecks.PARAGRAPH, "Say what you saw.");
        t.done();
    }

    /** A hazard may have come up on the way. */
    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return s.sheet()
                        .latest(PresenceSigned.class, p -> p.entry() == presence)
                        .filter(p -> !p.stamp().by().equals(actor.account()))
                        .isPresent()
                ? Missing.rule("not-yours", "Who signed in to be present says how it went.", "presence")
                : List.of();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(presence, PresenceSigned.class, "presence"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        new Invalid.Collector()
                .require(!MentorPresent.isEnded(s.sheet(), presence), "presence", "That presence has ended.")
                .throwIfAny();
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(
                "that of entry " + presence + (Boolean.TRUE.equals(stayed) ? ", stayed" : ", did not stay"), saw);
    }
}

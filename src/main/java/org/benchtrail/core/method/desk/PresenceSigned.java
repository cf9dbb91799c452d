package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/**
 * A mentor signed in to be present while a trainee does one dangerous act. It counts for that act alone, and as long as
 * {@link MentorPresent} says. To be present is neither work nor a judgement of it.
 *
 * @param about entry number of the check or action that is carried out; 1 for a live measurement that belongs to no check
 * @param trainee account of whose act it is; empty where whoever signs is not the mentor of who has the ticket
 */
@ServerOnly
public record PresenceSigned(int about, String trainee) implements DeskFact {
    private static final String ANCHOR = "presence";

    public PresenceSigned {
        FieldChecks t = new FieldChecks();
        trainee = t.optional("trainee", trainee, 60);
        t.done();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        if (!actor.is(Role.MENTOR)) {
            return Missing.rule("not-your-role", "Only a mentor is present for a trainee's dangerous work.", ANCHOR);
        }
        if (s.sheet().isHand(actor.account())) {
            return Missing.rule("own-work", "You have worked on this ticket: a mentor who has not is present.", ANCHOR);
        }
        return trainee.isEmpty() || !trainee.equals(s.sheet().course().assignee())
                ? Missing.rule(
                        "not-your-trainee",
                        "Only the mentor whom the trainee has now is present: an administrator assigns another.",
                        ANCHOR)
                : List.of();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(about, Fact.class, "about"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        new Invalid.Collector()
                .require(
                        MentorPresent.isToDo(s.sheet(), about),
                        "about",
                        "That is no check or action that is still to be carried out.")
                .throwIfAny();
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return "for entry " + about + ", while " + reader.name(trainee) + " does it";
    }
}

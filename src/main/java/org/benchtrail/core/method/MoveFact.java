package org.benchtrail.core.method;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** A change of step, of standing or of hands: one record for each move of the method. */
public sealed interface MoveFact extends DeskFact {
    Move move();

    /** Where the ticket stands once this has happened. */
    Course after(Course before, Stamp stamp);

    /** Leave the step for the next one. */
    record Advanced() implements MoveFact {
        @Override
        public Move move() {
            return Move.ADVANCE;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.atStep(before.step().next());
        }
    }

    /** The active theory is ruled out; a new round starts at theorize. */
    record RuledOut() implements MoveFact {
        @Override
        public Move move() {
            return Move.REFUTE;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.nextRound(Step.THEORIZE, stamp);
        }
    }

    /** Carrying out the plan showed the theory wrong, or an action failed. */
    record Rethought(String reason, boolean theoryWrong) implements MoveFact {
        public Rethought {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say what carrying out the plan has shown.");
            t.done();
        }

        @Override
        public Move move() {
            return Move.RETHINK;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.nextRound(Step.THEORIZE, stamp);
        }
    }

    /** A symptom persists, or a new fault appeared. */
    record VerifyFailed(String reason) implements MoveFact {
        public VerifyFailed {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say what persists or appeared.");
            t.done();
        }

        @Override
        public Move move() {
            return Move.FAIL;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.nextRound(Step.THEORIZE, stamp);
        }
    }

    record Closed() implements MoveFact {
        @Override
        public Move move() {
            return Move.CLOSE;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.ended(Standing.CLOSED, stamp.at());
        }
    }

    record Reopened(String reason) implements MoveFact {
        public Reopened {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why it is opened again.");
            t.done();
        }

        @Override
        public Move move() {
            return Move.REOPEN;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.reopened(stamp);
        }
    }

    record Held(WaitingFor waitingFor, Instant followUp, String note) implements MoveFact {
        public Held {
            Texts t = new Texts();
            t.require(waitingFor != null, "waitingFor", "Say what it waits for.");
            t.require(followUp != null, "followUp", "Say when to look at it again.");
            followUp = followUp == null ? null : followUp.truncatedTo(ChronoUnit.MICROS);
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }

        @Override
        public Move move() {
            return Move.HOLD;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.held(new DeskFact.Hold(waitingFor, followUp, note));
        }
    }

    record Resumed() implements MoveFact {
        @Override
        public Move move() {
            return Move.RESUME;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.held(null);
        }
    }

    /** Given to another account, or taken from the queue. */
    record HandedOver(String to, Set<Role> toRoles, String note) implements MoveFact {
        public HandedOver {
            Texts t = new Texts();
            to = t.required("to", to, 60, "Say who takes it.");
            toRoles = Texts.roles(toRoles);
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }

        @Override
        public Move move() {
            return Move.HAND_OVER;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.inHandsOf(to, toRoles);
        }
    }

    record Escalated(String to, String tried) implements MoveFact {
        public Escalated {
            Texts t = new Texts();
            to = t.required("to", to, Texts.LINE, "Say to whom, or to which supplier.");
            tried = t.required("tried", tried, Texts.PARAGRAPH, "Say what was tried.");
            t.done();
        }

        @Override
        public Move move() {
            return Move.ESCALATE;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.escalated(this);
        }
    }

    record Returned(String note) implements MoveFact {
        public Returned {
            Texts t = new Texts();
            note = t.required("note", note, Texts.PARAGRAPH, "Say what came back.");
            t.done();
        }

        @Override
        public Move move() {
            return Move.RETURN;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.escalated(null);
        }
    }

    /** Ended without a fix: withdrawn, or a duplicate of another ticket. */
    record Cancelled(String reason, @Nullable String duplicateOf) implements MoveFact {
        public Cancelled {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why it ends here.");
            duplicateOf = number(t, duplicateOf);
            t.done();
        }

        private static @Nullable String number(Texts t, @Nullable String typed) {
            if (typed == null || typed.isBlank()) {
                return null;
            }
            try {
                return TicketNumber.parse(typed).toString();
            } catch (Invalid e) {
                e.problems().forEach(p -> t.require(false, "duplicateOf", p.sentence()));
                return null;
            }
        }

        @Override
        public Move move() {
            return Move.CANCEL;
        }

        @Override
        public Course after(Course before, Stamp stamp) {
            return before.ended(Standing.CANCELLED, stamp.at());
        }
    }
}

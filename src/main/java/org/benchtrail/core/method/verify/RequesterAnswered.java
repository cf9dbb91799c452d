package org.benchtrail.core.method.verify;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record RequesterAnswered(
        RequesterState state, int tries, @FreeText String note) implements VerifyFact {
    public RequesterAnswered {
        FieldChecks t = new FieldChecks();
        t.require(state != null, "state", "Say what the requester answered.");
        t.require(
                state != RequesterState.NOT_REACHED || tries >= 1,
                "tries",
                "Say how often it was tried: at least once.");
        t.require(tries >= 0 && tries <= 1000, "tries", "Give a number of tries from 0 to 1000.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_WORK;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(
                state == RequesterState.NOT_REACHED ? state.words() + ", " + tries + " tries" : state.words(), note);
    }
}

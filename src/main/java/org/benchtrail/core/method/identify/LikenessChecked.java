package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/** Similar tickets and known causes were shown and looked at; the list may be empty. */
public record LikenessChecked(List<String> shown) implements IdentifyFact {
    public LikenessChecked {
        FieldChecks t = new FieldChecks();
        List<String> given = shown == null ? List.of() : shown;
        t.require(given.size() <= 200, "shown", "Name at most 200 of what was shown.");
        shown = given.stream()
                .map(s -> t.optional("shown", s, FieldChecks.LINE))
                .toList();
        t.done();
    }

    @Override
    public String told(Telling reader) {
        return shown.isEmpty() ? "nothing alike was there" : "looked at " + String.join(", ", shown);
    }
}

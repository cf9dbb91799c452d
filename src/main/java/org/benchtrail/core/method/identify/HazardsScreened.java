package org.benchtrail.core.method.identify;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * Every hazard looked for; any that is present stops the work until it is cleared.
 *
 * <p>A screening that was recorded when the list was shorter stays readable and keeps meeting what was asked then. A new one
 * answers all.
 */
public record HazardsScreened(Map<Hazard, Boolean> present) implements IdentifyFact {
    public HazardsScreened {
        present = EnumCopies.map(Hazard.class, present);
        boolean shorter = answersShorterList(present);
        require(present, Stream.of(Hazard.values()).filter(h -> !shorter || !h.askedLater()));
    }

    private static void require(Map<Hazard, Boolean> present, Stream<Hazard> asked) {
        FieldChecks t = new FieldChecks();
        asked.forEach(hazard -> t.require(present.containsKey(hazard), "present." + hazard, question(hazard)));
        t.done();
    }

    public static String question(Hazard hazard) {
        return "Look for " + hazard.words() + ": yes or no.";
    }

    /** Whether it was recorded when the list was shorter. */
    public boolean answersShorterList() {
        return answersShorterList(present);
    }

    private static boolean answersShorterList(Map<Hazard, Boolean> present) {
        return present.keySet().stream().noneMatch(Hazard::askedLater);
    }

    /** What was found. */
    public Set<Hazard> found() {
        Set<Hazard> found = EnumSet.noneOf(Hazard.class);
        present.forEach((hazard, there) -> {
            if (there) {
                found.add(hazard);
            }
        });
        return found;
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        require(present, Stream.of(Hazard.values()));
        return List.of();
    }

    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_REOPENED;
    }

    @Override
    public List<Sign> signs(JobSheet sheet) {
        boolean latest = sheet.latest(HazardsScreened.class)
                .filter(l -> l.fact().equals(this))
                .isPresent();
        return present.entrySet().stream()
                .filter(h -> latest)
                .map(h -> Sign.of("hazard/" + h.getKey() + (h.getValue() ? "/present" : "/absent")))
                .toList();
    }

    @Override
    public String told(Telling reader) {
        String found = Told.list(
                Stream.of(Hazard.values())
                        .filter(h -> Boolean.TRUE.equals(present.get(h)))
                        .toList(),
                Hazard::words);
        return found.isEmpty() ? "none found" : "found: " + found;
    }
}

package org.benchtrail.core.method;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.desk.MoveFact;

/**
 * A move out of a step that stands in a trail although the method, asked once more, refuses it.
 *
 * @param move as it stands there
 * @param missing never empty
 */
public record Redecided(Entry move, List<Missing> missing) {
    /** Is raised when something is decided otherwise than before without a new requirement or kind of fact. */
    private static final int VERSION = 1;

    private static final int DIGITS = 16;
    private static final String RULES = named();

    public Redecided {
        missing = List.copyOf(missing);
    }

    /** Stands for the rules by which this release decides: of releases with the same one an old move can be decided again. */
    public static String rules() {
        return RULES;
    }

    private static String named() {
        String codes = Requirements.all().stream().map(Requirement::code).collect(Collectors.joining("\n"));
        String kinds = String.join("\n", new TreeSet<>(FactKinds.all().keySet()));
        return VERSION + "-"
                + HashChain.hash((codes + "\n\n" + kinds).getBytes(StandardCharsets.UTF_8))
                        .substring(0, DIGITS);
    }

    /**
     * Decides again every move out of a step.
     *
     * @param trail a whole one
     * @param after number of the last entry that is not asked about
     * @param policies all that the site ever had, by the name that entries give them; empty where the values are not known any more
     */
    public static List<Redecided> of(List<Entry> trail, int after, Map<String, Optional<Policy>> policies) {
        List<Redecided> refused = new ArrayList<>();
        JobSheet sheet = JobSheet.open(trail.get(0));
        for (Entry entry : trail.subList(1, trail.size())) {
            if (entry.stamp().entry() > after
                    && entry.fact() instanceof MoveFact fact
                    && fact.move().gated()) {
                again(sheet, entry, policies).ifPresent(refused::add);
            }
            sheet = sheet.with(entry);
        }
        return refused;
    }

    private static Optional<Redecided> again(JobSheet before, Entry move, Map<String, Optional<Policy>> policies) {
        Stamp stamp = move.stamp();
        Origin origin = stamp.origin();
        if (origin == null) {
            return Optional.empty();
        }
        Optional<Policy> policy = policies.get(origin.policy());
        if (policy == null) {
            return Optional.of(new Redecided(
                    move, Missing.rule("policy-known", "It names a policy that this site never had.", "trail")));
        }
        Actor actor = new Actor(stamp.person(), stamp.person(), stamp.roles());
        return policy.map(by -> Method.decide(before, move.fact(), actor, by, stamp.at(), stamp.request()))
                .flatMap(decision -> decision instanceof Decision.Refused refused
                        ? Optional.of(new Redecided(move, refused.missing()))
                        : Optional.empty());
    }

    /** What it lacks, in sentences for people. */
    public String why() {
        return missing.stream().map(Missing::sentence).collect(Collectors.joining(" "));
    }
}

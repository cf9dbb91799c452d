package org.benchtrail.core.practice.job;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Parameter;
import org.benchtrail.core.practice.Stated;
import org.benchtrail.core.practice.Stated.Span;
import org.jspecify.annotations.Nullable;

/**
 * A practice job that a mentor wrote. All of it is chance as in any other job, but for what it says.
 *
 * @param text as it was written
 * @param symptom title of the job, as whoever took the call wrote it
 * @param message what the requester said
 * @param parameters of the device, whatever its fault
 * @param faults any of which it may have, in the order written, each with how it is
 * @param knows what the requester answers; what is not named is left to chance
 * @param backup what is true of it; null for chance
 * @param hazards that are there, each with what is noticed of it by whoever looks at the device
 * @param alike pairs of faults that no reading needs to tell apart
 */
public record OwnJob(
        String text,
        Family family,
        String symptom,
        String message,
        String device,
        Map<Parameter, Span> parameters,
        Map<String, Map<Parameter, Span>> faults,
        Map<DeviceAct, Knows> knows,
        @Nullable Backup backup,
        Map<String, String> hazards,
        Set<Set<String>> alike) {
    /** What the requester says when asked. */
    public enum Knows {
        RIGHT(0),
        WRONG(Reporter.KNOWS),
        UNKNOWN(1);

        private final double draw;

        Knows(double draw) {
            this.draw = draw;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public enum Backup {
        READABLE(0, 0),
        UNREADABLE(0, 1),
        MISSING(1, 1);

        private final double exists;
        private final double readable;

        Backup(double exists, double readable) {
            this.exists = exists;
            this.readable = readable;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Binds the text without telling it. */
    String digest() {
        return Hash.sha256(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    String fault(Chance chance) {
        List<String> names = List.copyOf(faults.keySet());
        return names.get((int) (chance.uniform("fault") * names.size()));
    }

    /** The device with one of the family's faults, the author's or another; empty if no draw shows the symptom. */
    public Optional<PracticeDevice> device(Chance seed, String fault) {
        return device(seed, fault, stated(fault));
    }

    /** Whether the first draw shows the symptom. */
    public boolean showsAtOnce(Chance seed, String fault) {
        return device(seed, fault, stated(fault).drawnOnce()).isPresent();
    }

    private Stated stated(String fault) {
        return new Stated(parameters, faults.getOrDefault(fault, Map.of()), Stated.NOTHING.draws());
    }

    private Optional<PracticeDevice> device(Chance seed, String fault, Stated stated) {
        return family.start(seed.deciding(decided()), fault, stated).map(device -> new Noticed(device, noticed()));
    }

    private List<String> noticed() {
        return hazards.values().stream().sorted().toList();
    }

    private Map<String, Double> decided() {
        Map<String, Double> decided = new HashMap<>();
        knows.forEach((act, knows) -> Reporter.labels(act).forEach(label -> decided.put(label, knows.draw)));
        if (backup != null) {
            decided.put("backup exists", backup.exists);
            decided.put("backup readable", backup.readable);
        }
        return decided;
    }

    /** Whether there is something on a device of that family that a backup could hold. */
    public static boolean isBackedUp(Family family) {
        return family.start(new Chance(new byte[32]), family.faults().get(0), Stated.NOTHING)
                .orElseThrow()
                .isBackedUp()
                .isPresent();
    }

    /** A device at which whoever looks first notices something besides. */
    private record Noticed(PracticeDevice device, List<String> words) implements PracticeDevice {
        @Override
        public Answer act(DeviceAct act) {
            Answer answer = device.act(act);
            boolean now = act.way() == DeviceAct.Way.LOOK && !words.isEmpty();
            List<String> said = new ArrayList<>(List.of(answer.words()));
            if (now) {
                said.addAll(words);
            }
            return answer.of(new Noticed(answer.after(), now ? List.of() : words), String.join(" ", said));
        }

        @Override
        public boolean isWell() {
            return device.isWell();
        }

        @Override
        public Optional<Boolean> isBackedUp() {
            return device.isBackedUp();
        }
    }
}

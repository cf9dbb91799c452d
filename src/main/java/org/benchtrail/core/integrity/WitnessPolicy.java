package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Whose signatures somebody asks for before a checkpoint counts (C2SP tlog-policy): the logs, the witnesses, and which of them have to
 * have signed.
 */
public final class WitnessPolicy {
    private static final String NONE = "none";

    private final List<Party> logs = new ArrayList<>();
    private final Map<String, Party> witnesses = new LinkedHashMap<>();
    private final Map<String, Group> groups = new LinkedHashMap<>();
    private @Nullable String quorum;

    private WitnessPolicy() {}

    /** A log or a witness, and where it is reached; the address may be empty. */
    public record Party(VerifierKey key, String address) {}

    /** So many of these have to have signed. */
    private record Group(int needed, List<String> members) {}

    /** What a checkpoint's cosignatures come to. */
    public enum Vouching {
        /** Enough witnesses signed. */
        MET,
        NOT_MET,
        /** Enough signed if the signatures hold that cannot be verified here. */
        CANNOT_TELL,
        /** The policy asks for no witness. */
        NOBODY_ASKED
    }

    /** @throws IllegalArgumentException with the line that cannot be taken */
    public static WitnessPolicy parse(String text) {
        WitnessPolicy policy = new WitnessPolicy();
        int number = 0;
        for (String line : text.split("\n", -1)) {
            number++;
            String[] words = line.replaceFirst("#.*", "").strip().split("[ \t]+");
            try {
                policy.read(words);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("line " + number + " of the policy: " + e.getMessage(), e);
            }
        }
        if (policy.quorum == null) {
            throw new IllegalArgumentException("the policy has no quorum line");
        }
        return policy;
    }

    private void read(String[] words) {
        switch (words[0]) {
            case "" -> {}
            case "log" -> logs.add(party(words, 1));
            case "witness" -> {
                require(words.length > 2, "a witness has a name and a key");
                fresh(words[1]);
                witnesses.put(words[1], party(words, 2));
            }
            case "group" -> group(words);
            case "quorum" -> {
                require(quorum == null && words.length == 2, "one quorum, of one name");
                require(words[1].equals(NONE) || isDefined(words[1]), "'" + words[1] + "' is not defined before");
                quorum = words[1];
            }
            default -> throw new IllegalArgumentException("'" + words[0] + "' is not known");
        }
    }

    private static Party party(String[] words, int at) {
        require(words.length == at + 1 || words.length == at + 2, "a key, and an address at most");
        return new Party(VerifierKey.parse(words[at]), words.length > at + 1 ? words[at + 1] : "");
    }

    private void group(String[] words) {
        require(words.length > 3, "a group has a name, a number and members");
        fresh(words[1]);
        List<String> members = List.of(words).subList(3, words.length);
        require(new HashSet<>(members).size() == members.size(), "a member is named twice");
        members.forEach(member -> require(isDefined(member), "'" + member + "' is not defined before"));
        int needed = words[2].equals("all") ? members.size() : words[2].equals("any") ? 1 : Integer.parseInt(words[2]);
        require(needed >= 1 && needed <= members.size(), "so many members there are not");
        groups.put(words[1], new Group(needed, members));
    }

    private void fresh(String name) {
        require(!name.equals(NONE) && !isDefined(name), "'" + name + "' is taken");
    }

    private boolean isDefined(String name) {
        return witnesses.containsKey(name) || groups.containsKey(name);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }

    public List<Party> logs() {
        return List.copyOf(logs);
    }

    public List<Party> witnesses() {
        return List.copyOf(witnesses.values());
    }

    /**
     * Whether enough witnesses signed.
     *
     * @throws IllegalArgumentException if a signature by one of them does not hold
     */
    public Vouching vouching(SignedNote note) {
        if (NONE.equals(quorum)) {
            return Vouching.NOBODY_ASKED;
        }
        Set<String> signed = new HashSet<>();
        Set<String> perhaps = new HashSet<>();
        witnesses.forEach((name, witness) -> {
            if (!note.by(witness.key()).isEmpty()) {
                perhaps.add(name);
                if (witness.key().isUnderstood()) {
                    note.signers(List.of(witness.key()));
                    signed.add(name);
                }
            }
        });
        return vouching(signed, perhaps);
    }

    /**
     * Whether enough witnesses did something, each by its key: what was signed is known already. One of which the signature cannot be
     * verified here may have.
     */
    public Vouching vouching(Predicate<VerifierKey> did) {
        if (NONE.equals(quorum)) {
            return Vouching.NOBODY_ASKED;
        }
        Set<String> signed = new HashSet<>();
        Set<String> perhaps = new HashSet<>();
        witnesses.forEach((name, witness) -> {
            boolean known = witness.key().isUnderstood();
            if (known && did.test(witness.key())) {
                signed.add(name);
            }
            if (!known || did.test(witness.key())) {
                perhaps.add(name);
            }
        });
        return vouching(signed, perhaps);
    }

    private Vouching vouching(Set<String> signed, Set<String> perhaps) {
        if (isMet(String.valueOf(quorum), signed::contains)) {
            return Vouching.MET;
        }
        return isMet(String.valueOf(quorum), perhaps::contains) ? Vouching.CANNOT_TELL : Vouching.NOT_MET;
    }

    private boolean isMet(String name, Predicate<String> signed) {
        Group group = groups.get(name);
        return group == null
                ? signed.test(name)
                : group.members().stream().filter(m -> isMet(m, signed)).count() >= group.needed();
    }
}

package org.benchtrail.seal.offline;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.seal.timestamp.TimeStampRoots;
import org.jspecify.annotations.Nullable;

/**
 * What the verifier is given.
 *
 * @param export folder that was exported, or the file of one trail
 * @param policy whose signatures are asked for; null if none was given
 * @param earlier a head that whoever asks holds; null if none was given
 * @param leaves folder of the exported log, for the trail of one ticket; null if none was given
 * @param json whether the answer is read by a program
 * @param roots whose time-stamps are believed; null if that was not said
 */
record VerifyArguments(
        Path export,
        @Nullable WitnessPolicy policy,
        @Nullable Head earlier,
        @Nullable Path leaves,
        boolean json,
        @Nullable TimeStampRoots roots) {
    static final String USAGE =
            "verify FOLDER|TRAIL.jsonl [--policy FILE] [--earlier NOTE|SIZE:ROOT] [--leaves FOLDER] [--timestamp-roots PEM] [--json]";

    private static final String HELP = """
            %s

            FOLDER is an exported log, TRAIL.jsonl the file of one ticket.
              --policy FILE          whose signatures are asked for, in the lines of a policy file
              --earlier NOTE         a head that you kept, as a file
              --earlier SIZE:ROOT    a head that you have on paper: its leaves, a colon, its root
              --leaves FOLDER        beside the file of one ticket: the exported log, which shows that it has no further entry
              --timestamp-roots PEM  the roots of the authority whose time-stamps you believe
              --json                 answers in JSON, for a program

            It ends with 0 if the export holds and somebody outside the shop vouches for it, 1 if it does not hold,
            2 if it holds as far as can be told, 3 if this is no export.""".formatted(USAGE);

    private static final String JSON = "--json";
    private static final Pattern TYPED = Pattern.compile("([1-9][0-9]{0,18}):(\\S*)");
    private static final int ROOT = 44;

    /** @param typed whether somebody typed it, as it stands on paper */
    record Head(long size, Hash root, boolean typed) {
        /** What else it may be if another root is found. */
        String doubt() {
            return typed ? ", or a character of the root was typed wrongly" : "";
        }
    }

    /** @throws IllegalArgumentException with a sentence that says what cannot be taken */
    static VerifyArguments parse(List<String> words) throws IOException {
        if (words.equals(List.of("--help")) || words.equals(List.of("-h"))) {
            throw new IllegalArgumentException(HELP);
        }
        boolean json = words.contains(JSON);
        List<String> pairs = words.stream().filter(word -> !word.equals(JSON)).toList();
        if (pairs.isEmpty() || pairs.size() % 2 == 0) {
            throw new IllegalArgumentException("Use it so: " + USAGE);
        }
        @Nullable Path leaves = null;
        @Nullable WitnessPolicy policy = null;
        @Nullable Head earlier = null;
        @Nullable TimeStampRoots roots = null;
        for (int i = 1; i < pairs.size(); i += 2) {
            String value = pairs.get(i + 1);
            switch (pairs.get(i)) {
                case "--policy" ->
                    policy = WitnessPolicy.parse(Files.readString(Path.of(value), StandardCharsets.UTF_8));
                case "--earlier" -> earlier = head(value);
                case "--leaves" -> leaves = Path.of(value);
                case "--timestamp-roots" -> roots = TimeStampRoots.read(Path.of(value));
                default -> throw new IllegalArgumentException("Use it so: " + USAGE);
            }
        }
        return new VerifyArguments(Path.of(pairs.get(0)), policy, earlier, leaves, json, roots);
    }

    private static Head head(String value) throws IOException {
        Matcher typed = TYPED.matcher(value);
        if (typed.matches()) {
            return new Head(size(typed.group(1)), root(typed.group(2)), true);
        }
        Checkpoint note = Checkpoint.parse(
                SignedNote.parse(Files.readAllBytes(Path.of(value))).text());
        return new Head(note.size(), note.root(), false);
    }

    private static long size(String typed) {
        try {
            return Long.parseLong(typed);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("No log has " + typed + " leaves: look at the number once more.", e);
        }
    }

    private static Hash root(String typed) {
        if (typed.length() != ROOT) {
            throw new IllegalArgumentException(
                    "A root has " + ROOT + " characters, and this one has " + typed.length() + ": " + typed);
        }
        try {
            return Hash.ofBase64(typed);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "No root is written like this; look at each character once more, capitals too: " + typed, e);
        }
    }
}

package org.benchtrail.core.diagnosis.path;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** A test that is made from the structure alone. What each says of where the fault is: {@link GenericRules}. */
public enum PathAct {
    LOOK("Look, smell, listen at the %s; lights, settings, messages.", "Is anything wrong to be seen?"),
    RESEAT("Take the %s off and seat it anew.", "Is the fault gone?"),
    SUBSTITUTE("Put in a %s that is known to be good.", "Is the fault gone?"),
    BYPASS("Take the %s out of the way, or go past it.", "Is the fault gone?"),
    MOVE("Put the suspect %s into a good place.", "Does the fault go with it?"),
    /** A measurement, or a good source put in, at a boundary between two segments. */
    POINT("", ""),
    /** Another device that shares segments. */
    SISTER("%s", "Has it the same fault?"),
    MINIMAL("%s", "Does it work then?"),
    /** The same reading at another time or load. */
    REPEAT("%s", "Is it bad only then?"),
    LOG("%s", "Which part does the entry of the time of the fault name?"),
    UNDO("%s", "Is the fault gone?"),
    /** A change of a part as such; only ever a listed question. */
    CHANGE("", "");

    /** Tests of one segment, of which each segment has at most one a kind. */
    static final Set<PathAct> OF_A_SEGMENT = Set.of(LOOK, RESEAT, SUBSTITUTE, BYPASS, MOVE);

    /** Tests of the whole category. */
    static final Set<PathAct> OF_THE_WHOLE = Set.of(SISTER, MINIMAL, REPEAT, LOG, UNDO);

    /** Their positive outcome leaves the device mended as it stands. */
    static final Set<PathAct> CURES = Set.of(SUBSTITUTE, BYPASS, UNDO);

    /** Done to one segment they tell partly the same, and are weighed as one group. */
    static final Set<PathAct> TOUCHING = Set.of(RESEAT, SUBSTITUTE, BYPASS, MOVE);

    private final String instruction;
    private final String question;

    PathAct(String instruction, String question) {
        this.instruction = instruction;
        this.question = question;
    }

    /** What to do, for a segment's name or the words of the file. */
    String instruction(String what) {
        return String.format(Locale.ROOT, instruction, what);
    }

    public String question() {
        return question;
    }

    /** The act of that word, as files and ids write it. */
    public static Optional<PathAct> ofWord(String word) {
        return Stream.of(values()).filter(a -> a.word().equals(word)).findFirst();
    }

    /** As it is written in files and ids. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}

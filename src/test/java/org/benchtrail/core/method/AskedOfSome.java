package org.benchtrail.core.method;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The requirements that ask nothing of some tickets, and say why: those with an {@code unasked} of their own. */
public final class AskedOfSome {
    private AskedOfSome() {}

    public static Set<String> codes() {
        return Requirements.all().stream()
                .filter(AskedOfSome::saysWhy)
                .map(Requirement::code)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean saysWhy(Requirement requirement) {
        try {
            return requirement.getClass().getMethod("unasked", Situation.class).getDeclaringClass()
                    != Requirement.class;
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(e);
        }
    }
}

package org.benchtrail.people;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;

/** What a program may do with its token, each more than the one before; never more than its owner may. */
public enum TokenScope {
    LOG("only follow the log, which holds no content"),
    READ("only read what you may read"),
    ACT("act as you, but for what only an administrator does"),
    ADMINISTER("everything that you may do");

    private final String words;

    TokenScope(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** This one and those before it. */
    Set<TokenScope> included() {
        return EnumSet.range(LOG, this);
    }

    /** Whether something can be asked of the API with it: reading changes nothing. Whoever has any right may follow the log. */
    static boolean allows(Set<TokenScope> scopes, String method) {
        boolean reading = method.equals("GET") || method.equals("HEAD") || method.equals("OPTIONS");
        return scopes.contains(reading ? READ : ACT);
    }

    /** @throws Invalid if it is none of these */
    static TokenScope parse(String name) {
        return Stream.of(values())
                .filter(scope -> scope.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Invalid("scope", "Choose what the program may do."));
    }

    static String join(Set<TokenScope> scopes) {
        return Stream.of(values())
                .filter(scopes::contains)
                .map(scope -> scope.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
    }
}

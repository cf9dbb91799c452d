package org.benchtrail.platform.problem;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * One problem, told to a person or a program.
 *
 * @param status the HTTP status, the kind's own except where the API and the pages differ
 * @param detail what happened, a sentence for people
 * @param current what is stored now, for a stale change
 * @param reference finds the entry in the server's log
 */
public record Problem(
        ProblemKind kind,
        int status,
        String detail,
        List<Invalid.Problem> errors,
        @Nullable Object current,
        String reference) {

    public static final String MEDIA_TYPE = "application/problem+json";

    public static Problem of(ProblemKind kind, String detail) {
        return new Problem(kind, kind.status(), detail, List.of(), null, newReference());
    }

    Problem withStatus(int other) {
        return new Problem(kind, other, detail, errors, current, reference);
    }

    Problem withErrors(List<Invalid.Problem> found) {
        return new Problem(kind, status, detail, found, current, reference);
    }

    Problem withCurrent(@Nullable Object stored) {
        return new Problem(kind, status, detail, errors, stored, reference);
    }

    /** The members of an RFC 9457 problem detail, with ours: {@code next}, {@code reference}, {@code errors}, {@code current}. */
    public Map<String, Object> members() {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("type", kind.type());
        members.put("title", kind.title());
        members.put("status", status);
        members.put("detail", detail);
        members.put("next", kind.next());
        members.put("reference", reference);
        if (!errors.isEmpty()) {
            members.put("errors", errors);
        }
        if (current != null) {
            members.put("current", current);
        }
        return members;
    }

    private static String newReference() {
        return UUID.randomUUID().toString().substring(0, 13);
    }
}

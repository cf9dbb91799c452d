package org.benchtrail.platform.problem;

/** Every way in which a request can go wrong: stable code, HTTP status, and what the reader is told. */
public enum ProblemKind {
    INVALID("invalid-input", 422, "Some entries need correcting", "Correct the entries named here and send again."),
    MALFORMED("malformed-request", 400, "The request cannot be read", "Correct the place named here and send again."),
    FORM_REFUSED(
            "form-refused",
            400,
            "This form was not accepted",
            "Go back, reload the page, and send the form again; what you typed stays in the form when you go back."),
    NOT_SIGNED_IN(
            "not-signed-in",
            401,
            "You are not signed in",
            "Sign in in a second window, then come back to this one, go back, and send again; what you typed stays in the form."),
    FORBIDDEN("forbidden", 403, "Your roles do not allow this", "Ask somebody who has the role, or an administrator."),
    NOT_FOUND("not-found", 404, "This is not here", "Check the address, or start again from the first page."),
    METHOD("method-not-allowed", 405, "This cannot be done here", "Check the address and the method."),
    CONFLICT("conflict", 409, "This clashes with what is stored", "Look at what is stored now, then decide."),
    UNMET("requirement-missing", 409, "Something is missing first", "Meet what is listed as missing, then try again."),
    FORECAST_FIRST(
            "forecast-first",
            409,
            "Your forecast comes first",
            "Say on that ticket's job sheet what you expect, or skip it with a reason; then ask again."),
    STALE(
            "stale",
            409,
            "Somebody else changed this meanwhile",
            "Compare both values, then enter yours again if it still holds."),
    RECORD_BROKEN(
            "trail-broken",
            409,
            "The record does not hold",
            "Tell a supervisor or an administrator: what differs has to be put back, and it stands under Alarms. The ticket's"
                    + " trail shows what can still be read."),
    NEWER_RELEASE(
            "newer-release",
            409,
            "A later release wrote this",
            "Open it on a server of that release, or bring this one up to date; nothing is wrong with the record."),
    VERSION_NEEDED(
            "version-needed",
            428,
            "Say which version this builds on",
            "Read what is stored, and send its ETag as If-Match."),
    TOO_LARGE("too-large", 413, "This is too large", "Send a smaller file or a shorter text."),
    MEDIA(
            "media-type",
            415,
            "This kind of content is not taken here",
            "Send the kind of content that the address takes."),
    RANGE("range-not-there", 416, "The file has no such part", "Ask for a part within its length."),
    TOO_MANY(
            "too-many-requests",
            429,
            "Too many requests",
            "Wait as many seconds as Retry-After says, then go on more slowly."),
    NO_ROOM(
            "no-room",
            507,
            "There is no room for files at the moment",
            "Tell an administrator to make room on the disk; then send the file again."),
    DATABASE_AWAY(
            "database-away",
            503,
            "The database is away for a moment",
            "Try again in a few seconds. If it takes longer than some minutes, tell an administrator."),
    MAYBE_RECORDED(
            "maybe-recorded",
            503,
            "This may or may not have been recorded",
            "Send it again from here: what was recorded is then answered, and is not recorded twice. Or look at the entry first."),
    REFUSED("refused", 400, "The request was refused", "Check the request and send again."),
    FAILED(
            "failed",
            500,
            "Something went wrong on the server",
            "Try once more; if it happens again, tell an administrator the reference.");

    private final String code;
    private final int status;
    private final String title;
    private final String next;

    ProblemKind(String code, int status, String title, String next) {
        this.code = code;
        this.status = status;
        this.title = title;
        this.next = next;
    }

    public String code() {
        return code;
    }

    public String type() {
        return "urn:benchtrail:problem:" + code;
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    /** What the reader can do next, a sentence. */
    public String next() {
        return next;
    }

    /** The kind that fits an HTTP status answered by the framework itself. */
    static ProblemKind ofStatus(int status) {
        return switch (status) {
            case 401 -> NOT_SIGNED_IN;
            case 403 -> FORBIDDEN;
            case 404 -> NOT_FOUND;
            case 405 -> METHOD;
            case 409 -> CONFLICT;
            case 412 -> STALE;
            case 413 -> TOO_LARGE;
            case 415 -> MEDIA;
            case 416 -> RANGE;
            case 428 -> VERSION_NEEDED;
            default -> status >= 500 ? FAILED : REFUSED;
        };
    }
}

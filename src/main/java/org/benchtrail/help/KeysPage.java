package org.benchtrail.help;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.platform.Html;

/** Which keys do what. */
@Path("/keys")
@Authenticated
public class KeysPage {
    @CheckedTemplate(basePath = "help")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance keys(List<Key> everywhere, List<Key> onTheSheet);
    }

    /** @param does what it does, in words */
    record Key(String letter, String does) {}

    private static final List<Key> EVERYWHERE = List.of(
            new Key("t", "Today"),
            new Key("q", "Queue"),
            new Key("s", "Search"),
            new Key("n", "New ticket"),
            new Key("k", "Knowledge"),
            new Key("?", "This page"));

    private static final List<Key> ON_THE_SHEET = List.of(
            new Key("o", "To what is open in this step"),
            new Key("e", "To the evidence"),
            new Key("m", "To moving the ticket: hold, hand over, escalate, cancel"),
            new Key("1 to 4", "In a review: set the mark"));

    @GET
    @Blocking
    public Response keys() {
        return Html.ok(Templates.keys(EVERYWHERE, ON_THE_SHEET));
    }
}

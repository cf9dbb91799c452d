package org.benchtrail.knowledge;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.AskedFor;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.form.SignedOut;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Search over known causes and cases, and the page of one known cause. */
@Path("/knowledge")
public class KnowledgePage {
    private final KnowledgeSearch search;
    private final KnowledgeQueries queries;
    private final KnowledgeActs acts;
    private final FindingWords findingWords;
    private final CurrentActor current;
    private final Directory people;

    KnowledgePage(
            KnowledgeSearch search,
            KnowledgeQueries queries,
            KnowledgeActs acts,
            FindingWords findingWords,
            CurrentActor current,
            Directory people) {
        this.search = search;
        this.queries = queries;
        this.acts = acts;
        this.findingWords = findingWords;
        this.current = current;
        this.people = people;
    }

    @CheckedTemplate(basePath = "knowledge")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance search(KnowledgeView.Results v);

        static native TemplateInstance cause(
                KnowledgeView.OneCause v, FormValues fill, String open, String notice, List<String> problems);
    }

    @GET
    @Authenticated
    @Blocking
    public Response search(
            @RestQuery @Nullable String q,
            @RestQuery @Nullable String category,
            @RestQuery @Nullable String state,
            @RestQuery @Nullable String page) {
        String typed = q == null ? "" : q.strip();
        Category kind = AskedFor.choice(Category.class, category);
        CauseState wanted = AskedFor.choice(CauseState.class, state);
        int number = page != null && page.matches("[1-9]\\d{0,3}") ? Integer.parseInt(page) - 1 : 0;
        return Html.ok(Templates.search(
                typed.isEmpty() ? browse(kind, wanted, number) : results(typed, kind, wanted, number)));
    }

    private KnowledgeView.Results results(String typed, @Nullable Category kind, @Nullable CauseState state, int page) {
        SearchResults found = search.find(typed, kind, page, current.actor());
        KnowledgeView view = view();
        return new KnowledgeView.Results(
                typed,
                name(kind),
                name(state),
                KnowledgeView.categories(),
                KnowledgeView.states(),
                true,
                found.causes().stream().map(view::line).toList(),
                found.cases().stream().map(view::line).toList(),
                HowOften.of(found.causesTotal(), "known cause"),
                HowOften.of(found.casesTotal(), "closed ticket"),
                found.spelling(),
                found.loose(),
                !found.wholeCases(),
                false,
                page + 1,
                page == 0 ? null : address(typed, kind, state, page - 1),
                found.more() ? address(typed, kind, state, page + 1) : null);
    }

    /** Without words: the known causes that changed last. */
    private KnowledgeView.Results browse(@Nullable Category kind, @Nullable CauseState state, int page) {
        int size = KnowledgeSearch.PER_PAGE;
        List<CauseJson> listed = queries.browse(kind, state, page, size + 1, current.actor());
        boolean more = listed.size() > size;
        KnowledgeView view = view();
        return new KnowledgeView.Results(
                "",
                name(kind),
                name(state),
                KnowledgeView.categories(),
                KnowledgeView.states(),
                false,
                listed.stream().limit(size).map(view::line).toList(),
                List.of(),
                "",
                "",
                "",
                false,
                false,
                listed.isEmpty() && kind == null && state == null && queries.cases(1, current.actor()) == 0,
                page + 1,
                page == 0 ? null : address("", kind, state, page - 1),
                more ? address("", kind, state, page + 1) : null);
    }

    private KnowledgeView view() {
        return new KnowledgeView(people.names(), current.zone(), findingWords);
    }

    private static String address(String typed, @Nullable Category kind, @Nullable CauseState state, int page) {
        return "/knowledge?q=" + URLEncoder.encode(typed, StandardCharsets.UTF_8) + "&category=" + name(kind)
                + "&state=" + name(state) + "&page=" + (page + 1);
    }

    private static String name(@Nullable Enum<?> constant) {
        return constant == null ? "" : constant.name();
    }

    @GET
    @Path("{id}")
    @Authenticated
    @Blocking
    public Response cause(@RestPath long id) {
        KnowledgeQueries.WholeCause whole = queries.cause(id, current.actor());
        FormValues fill = KnowledgeForm.values(whole.cause().text());
        return Html.ok(Templates.cause(view().one(whole, current.actor()), fill, "", "", List.of()));
    }

    /** One of the forms of a known cause. Open to all, so that what a signed-out person typed can be given back to them. */
    @POST
    @Path("{id}/{act}")
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response act(@RestPath long id, @RestPath String act, MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/knowledge/" + id + "/" + act, typed);
        }
        Permissions.require(Permission.TEND_KNOWLEDGE, current.actor());
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    KnowledgeAct asked = KnowledgeForm.read(act, form);
                    return Html.goTo("/knowledge/" + acts.perform(id, form.version(), asked, current.actor()));
                },
                refusal -> again(id, act, form, refusal));
    }

    private TemplateInstance again(long id, String act, PostedForm form, Refusal refusal) {
        KnowledgeQueries.WholeCause whole = queries.cause(id, current.actor());
        List<Invalid.Problem> problems = KnowledgeForm.atFields(act, refusal.problems());
        FormValues fill = KnowledgeForm.values(whole.cause().text()).typed(form.typed(), problems);
        String notice = refusal.isStale()
                ? "Somebody else changed this meanwhile. What you typed is kept below: read how it stands now, then send it"
                        + " again."
                : "Nothing is saved yet. Correct this:";
        List<String> sentences =
                problems.stream().map(Invalid.Problem::sentence).distinct().toList();
        return Templates.cause(view().one(whole, current.actor()), fill, act, notice, sentences);
    }
}

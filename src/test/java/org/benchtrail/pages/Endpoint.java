package org.benchtrail.pages;

import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.server.multipart.MultipartFormDataInput;

/**
 * A method that answers as a page or takes its form.
 *
 * @param path its path, a star for each part that varies
 * @param names the fields it asks for one by one
 * @param whole whether it takes all fields at once and reads them by their names
 */
public record Endpoint(Method program, String method, String path, SortedSet<String> names, boolean whole) {

    /** All endpoints of pages. */
    public static List<Endpoint> all() {
        List<Endpoint> endpoints = new ArrayList<>();
        for (String file : Sources.programs().keySet()) {
            if (file.endsWith("Page.java")) {
                Class<?> page = load(file.replace(".java", "").replace('/', '.'));
                for (Method program : page.getDeclaredMethods()) {
                    if (program.isAnnotationPresent(POST.class) || program.isAnnotationPresent(GET.class)) {
                        endpoints.add(of(page, program));
                    }
                }
            }
        }
        return endpoints;
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name, false, Endpoint.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }

    private static Endpoint of(Class<?> page, Method program) {
        SortedSet<String> names = new TreeSet<>();
        boolean whole = false;
        for (Parameter parameter : program.getParameters()) {
            whole |= Set.of(MultivaluedMap.class, MultipartFormDataInput.class, UriInfo.class)
                    .contains(parameter.getType());
            if (parameter.isAnnotationPresent(BeanParam.class)) {
                Stream.of(parameter.getType().getDeclaredFields()).forEach(f -> add(names, f, f.getName()));
            } else {
                add(names, parameter, parameter.getName());
            }
        }
        String path = (path(page) + "/" + path(program)).replaceAll("/+", "/").replaceAll("(?<=.)/$", "");
        String method = program.isAnnotationPresent(POST.class) ? "post" : "get";
        return new Endpoint(program, method, path.replaceAll("\\{[^}]*}", "*"), names, whole);
    }

    private static String path(AnnotatedElement element) {
        Path path = element.getAnnotation(Path.class);
        return path == null ? "" : path.value();
    }

    /** Adds what a parameter is filled from: the name in its annotation, or its own. */
    private static void add(SortedSet<String> names, AnnotatedElement parameter, String own) {
        RestForm form = parameter.getAnnotation(RestForm.class);
        RestQuery query = parameter.getAnnotation(RestQuery.class);
        QueryParam old = parameter.getAnnotation(QueryParam.class);
        if (form != null) {
            names.add(form.value().isEmpty() ? own : form.value());
        } else if (query != null) {
            names.add(query.value().isEmpty() ? own : query.value());
        } else if (old != null) {
            names.add(old.value());
        }
    }

    /** Whether a form that is sent to a path comes here; the exact path before one with stars. */
    boolean answers(PageForm form) {
        return method.equals(form.method()) && matches(form.action());
    }

    private boolean matches(String action) {
        String[] mine = path.split("/");
        String[] theirs = action.split("/");
        boolean same = mine.length == theirs.length;
        for (int i = 0; same && i < mine.length; i++) {
            same = mine[i].equals("*") || mine[i].equals(theirs[i]);
        }
        return same;
    }

    /** The folder of the feature that the program belongs to, such as {@code org/benchtrail/ticket/}. */
    String folder() {
        return program.getDeclaringClass()
                        .getPackageName()
                        .replaceAll("^(\\w+\\.\\w+\\.\\w+).*", "$1")
                        .replace('.', '/')
                + "/";
    }

    /** How many parts of the path are given as they are. */
    long exactness() {
        return Stream.of(path.split("/")).filter(p -> !p.equals("*")).count();
    }
}
